/** The line on which O₂ and CO₂ of one fuel lie together, with the reading on it or beside it. */
import { O2_IN_DRY_AIR_VOL_PCT } from '../../../domain/combustion/combustionConstants.ts';
import { co2FromO2 } from '../../../domain/combustion/o2Co2.ts';
import { type Chart, curveOver } from '../chart/chart.ts';
import { PERCENT_FINE } from '../core/measures.ts';
import type { Worked } from '../core/worked.ts';
import { FUEL_CHOICES, FUELS, type FuelChoice } from './fuelChoice.ts';

const SHOWN: readonly FuelChoice[] = ['natural-gas', 'propane', 'heating-oil'];

export function o2Co2Chart(chosen: FuelChoice, o2: Worked<number>, co2: Worked<number>): Chart {
  const others = SHOWN.filter((key) => FUELS[key].family !== FUELS[chosen].family);
  const curves = [...others, chosen].map((key) => ({
    label: FUEL_CHOICES[key],
    // A straight line: its ends and the middle say all of it.
    points: curveOver(0, O2_IN_DRY_AIR_VOL_PCT, (o2DryVolPct) => co2FromO2({ fuel: FUELS[key], o2DryVolPct }), 2),
    weight: key === chosen ? ('main' as const) : ('other' as const),
  }));
  return {
    title: 'CO₂ against O₂, by fuel',
    x: { label: 'O₂, dry', measure: PERCENT_FINE },
    y: { label: 'CO₂, dry', measure: PERCENT_FINE },
    curves,
    marks: o2.ok && co2.ok ? [{ label: 'reading', at: [o2.value, co2.value] }] : [],
  };
}
