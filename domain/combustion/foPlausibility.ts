/**
 * Whether a pair of O2 and CO2 readings can belong to this fuel: the Fo test. It returns numbers and bands; what they
 * mean for a visit is judged elsewhere.
 *
 * Formula  Fo = (20.9 − O2)/CO2; with CO in %: O2 − ½CO and CO2 + CO. Fo of the fuel = 20.9/CO2max.
 *          tight band ± max(0.08, 0.7/CO2), which stands for ±0.2 % O2 and ±0.3 % CO2 of instrument error
 * Units    dry volume %, CO in ppm; Fo dimensionless
 * Valid    O2 0–20.9 %, CO2 0.1–25 %, CO 0–100 000 ppm: wide, since it exists to catch wrong entries
 * Errors   blind to air leaking in before the probe (slides along the same line) and to CO2 calculated from O2
 * Source   US EPA Method 3B (bands from memory); tight band our own judgement
 * Checked  tests/checks/combustion/fo.test.ts
 */
import type { DryVolPct, PpmDry } from '../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../result.ts';
import { O2_IN_AIR_EPA_VOL_PCT } from './combustionConstants.ts';
import type { Fuel, FuelFamily } from './fuel.ts';

export type FoBand = { readonly min: number; readonly max: number };

export const EPA_FO_BANDS: Readonly<Record<FuelFamily, FoBand>> = {
  'natural-gas': { min: 1.6, max: 1.836 },
  propane: { min: 1.434, max: 1.586 },
  butane: { min: 1.405, max: 1.553 },
  'distillate-oil': { min: 1.26, max: 1.413 },
};

const TIGHT_BAND_FLOOR = 0.08;
const TIGHT_BAND_PCT_CO2 = 0.7;

export type FoPlausibility = {
  readonly fo: number;
  readonly foOfFuel: number;
  readonly deviation: number;
  readonly epaBand: FoBand;
  readonly tightBand: FoBand;
  readonly isInsideEpaBand: boolean;
  readonly isInsideTightBand: boolean;
};

export function foPlausibility(input: {
  readonly fuel: Fuel;
  readonly o2DryVolPct: DryVolPct;
  readonly co2DryVolPct: DryVolPct;
  readonly coPpmDry: PpmDry;
}): Result<FoPlausibility, OutOfRange> {
  const outside =
    checkRange('o2DryVolPct', input.o2DryVolPct, 0, O2_IN_AIR_EPA_VOL_PCT) ??
    checkRange('co2DryVolPct', input.co2DryVolPct, 0.1, 25) ??
    checkRange('coPpmDry', input.coPpmDry, 0, 100_000);
  if (outside) return err(outside);

  const coPct = input.coPpmDry / 10_000;
  const fo = (O2_IN_AIR_EPA_VOL_PCT - (input.o2DryVolPct - coPct / 2)) / (input.co2DryVolPct + coPct);
  const foOfFuel = O2_IN_AIR_EPA_VOL_PCT / input.fuel.co2MaxDryVolPct;
  const allowed = Math.max(TIGHT_BAND_FLOOR, TIGHT_BAND_PCT_CO2 / input.co2DryVolPct);
  const epaBand = EPA_FO_BANDS[input.fuel.family];
  const tightBand = { min: foOfFuel - allowed, max: foOfFuel + allowed };
  return ok({
    fo,
    foOfFuel,
    deviation: fo - foOfFuel,
    epaBand,
    tightBand,
    isInsideEpaBand: contains(epaBand, fo),
    isInsideTightBand: contains(tightBand, fo),
  });
}

function contains(band: FoBand, value: number): boolean {
  return value >= band.min && value <= band.max;
}
