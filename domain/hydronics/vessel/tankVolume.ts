import { PA_PER_BAR, STANDARD_ATMOSPHERE_PA } from '../../quantity/conversions.ts';
import type { KelvinDifference, Litre } from '../../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../../result.ts';
import { LINEAR_EXPANSION_PER_K, type PipeMetal } from './pipeGrowth.ts';

/** What both tank forms need to know. Pressures are **absolute**: with gauge pressures the tank comes out a third too small. */
export type TankDuty = {
  readonly systemVolumeL: Litre;
  /** v2/v1 − 1, see `liquidExpansion`. */
  readonly expansionFraction: number;
  readonly temperatureRiseK: KelvinDifference;
  /** null leaves the pipes' growth out, which is the cautious side. */
  readonly pipeMetal: PipeMetal | null;
  readonly coldPressureBarAbs: number;
  readonly hotPressureBarAbs: number;
};

/**
 * Diaphragm tank by the ASHRAE form, pre-charged to the cold pressure.
 *
 * Formula  Vt = Vs·[(v2/v1 − 1) − 3αΔt]/(1 − P1/P2)
 * Units    L, K, bar absolute; L
 * Valid    system 0–1 000 000 L, expansion 0–0.2, rise 0–200 K, pressures 0.1–30 bar absolute with hot above cold by at
 *          least 0.01 bar, water growth at least the pipes'; outside it an error, never a number
 * Source   ASHRAE HVAC Systems and Equipment, hydronic chapter, diaphragm tanks
 * Checked  tests/checks/hydronics/vesselRows.ts E1, E3, E4
 */
export function diaphragmTankVolume(duty: TankDuty): Result<Litre, OutOfRange> {
  const growth = netGrowth(duty);
  if (!growth.ok) return growth;
  return ok(growth.value / (1 - duty.coldPressureBarAbs / duty.hotPressureBarAbs));
}

/**
 * Plain closed tank (air over water, no diaphragm), filled from atmospheric pressure.
 *
 * Formula  Vt = Vs·[(v2/v1 − 1) − 3αΔt]/(Pa/P1 − Pa/P2)
 * Units    L, K, bar absolute; L
 * Valid    as `diaphragmTankVolume`, air 0.5–1.1 bar absolute; outside it an error, never a number
 * Source   ASHRAE HVAC Systems and Equipment, hydronic chapter, closed tanks
 * Checked  tests/checks/hydronics/vesselRows.ts E2
 */
export function plainTankVolume(
  duty: TankDuty & { readonly atmosphericPressureBarAbs?: number },
): Result<Litre, OutOfRange> {
  const {
    coldPressureBarAbs,
    hotPressureBarAbs,
    atmosphericPressureBarAbs = STANDARD_ATMOSPHERE_PA / PA_PER_BAR,
  } = duty;
  const refused = checkRange('atmosphericPressureBarAbs', atmosphericPressureBarAbs, 0.5, 1.1);
  if (refused) return err(refused);
  const growth = netGrowth(duty);
  if (!growth.ok) return growth;
  const acceptance = atmosphericPressureBarAbs / coldPressureBarAbs - atmosphericPressureBarAbs / hotPressureBarAbs;
  return ok(growth.value / acceptance);
}

function netGrowth(duty: TankDuty): Result<Litre, OutOfRange> {
  const { systemVolumeL, expansionFraction, temperatureRiseK, pipeMetal, coldPressureBarAbs, hotPressureBarAbs } = duty;
  const refused =
    checkRange('systemVolumeL', systemVolumeL, 0, 1_000_000) ??
    checkRange('expansionFraction', expansionFraction, 0, 0.2) ??
    checkRange('temperatureRiseK', temperatureRiseK, 0, 200) ??
    checkRange('coldPressureBarAbs', coldPressureBarAbs, 0.1, 30) ??
    checkRange('hotPressureBarAbs', hotPressureBarAbs, coldPressureBarAbs + 0.01, 31);
  if (refused) return err(refused);
  const pipeGrowth = pipeMetal === null ? 0 : 3 * LINEAR_EXPANSION_PER_K[pipeMetal] * temperatureRiseK;
  const netFraction = expansionFraction - pipeGrowth;
  const refusedGrowth = checkRange('expansionBeyondThePipes', netFraction, 0, null);
  return refusedGrowth ? err(refusedGrowth) : ok(systemVolumeL * netFraction);
}
