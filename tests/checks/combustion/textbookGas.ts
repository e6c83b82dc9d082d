/** The gas of "Fundamentals of Engineering Thermodynamics", Ex. 13.3; its C4H10 is taken as n-butane. */
import { gasFuel } from '../../../domain/combustion/gasFuel.ts';
import { unwrap } from '../../../domain/result.ts';

export const TEXTBOOK_GAS = unwrap(
  gasFuel({
    name: 'textbook gas',
    family: 'natural-gas',
    molePct: { methane: 80.62, ethane: 5.41, propane: 1.87, nButane: 1.6, nitrogen: 10.5 },
  }),
);
