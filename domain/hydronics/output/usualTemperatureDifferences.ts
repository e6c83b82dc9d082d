import type { KelvinDifference } from '../../quantity/units.ts';

export type CircuitKind =
  | 'fin-tube-or-cast-iron'
  | 'european-radiator-rating'
  | 'boiler-rating'
  | 'condensing-radiators'
  | 'floor-loops'
  | 'hot-water-plate';

export type UsualTemperatureDifference = {
  readonly circuit: CircuitKind;
  readonly label: string;
  readonly deltaTK: readonly [least: KelvinDifference, most: KelvinDifference];
  readonly basis: string;
};

/**
 * The temperature difference a circuit is usually designed or rated for: a first expectation, not a limit.
 *
 * Source   as each row says; the 20 °F of North American design is 11.1 K
 */
export const USUAL_TEMPERATURE_DIFFERENCES: readonly UsualTemperatureDifference[] = [
  {
    circuit: 'fin-tube-or-cast-iron',
    label: 'Fin-tube or cast iron, North American design',
    deltaTK: [20 / 1.8, 20 / 1.8],
    basis: 'trade practice: 20 °F',
  },
  {
    circuit: 'european-radiator-rating',
    label: 'European radiator rating, 75/65',
    deltaTK: [10, 10],
    basis: 'EN 442 rating point',
  },
  {
    circuit: 'boiler-rating',
    label: 'Boiler rating points, 80/60 and 50/30',
    deltaTK: [20, 20],
    basis: 'EN 15502, from memory',
  },
  {
    circuit: 'condensing-radiators',
    label: 'Radiators on a condensing boiler',
    deltaTK: [20, 20],
    basis: 'common practice, no source',
  },
  {
    circuit: 'floor-loops',
    label: 'Floor loops',
    deltaTK: [5, 10],
    basis: 'floor-heating guide (10 K occupied, 6 K edge zone) and common practice',
  },
  {
    circuit: 'hot-water-plate',
    label: 'Hot water through a plate heat exchanger, rise',
    deltaTK: [30, 50],
    basis: 'common practice, no source',
  },
];
