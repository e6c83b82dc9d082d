import type { BarGauge, Litre } from '../../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../../result.ts';
import { checkVesselDuty, expandedWaterL, type VesselDuty } from './vesselDuty.ts';

/**
 * Cold fill pressures between which a vessel keeps its reserve and still takes the expansion.
 *
 * Formula  pa,min = VN(p0 + 1)/(VN − VWR) − 1; pa,max = (pe + 1)/[1 + (Ve/VN)(pe + 1)/(p0 + 1)] − 1
 * Units    L, bar gauge; bar gauge
 * Valid    as `vesselVolumeNeeded`, vessel 1–100 000 L, reserve less than 90 % of it; outside it an error, never a number
 * Source   EN 12828, formula from memory; gas law
 * Checked  tests/checks/hydronics/vesselRows.ts E9
 */
export function vesselFillWindow(
  duty: VesselDuty & { readonly vesselVolumeL: Litre; readonly waterReserveL: Litre },
): Result<VesselFillWindow, OutOfRange> {
  const { vesselVolumeL, waterReserveL, preChargeBarG, endPressureBarG } = duty;
  const refused =
    checkVesselDuty(duty) ??
    checkRange('vesselVolumeL', vesselVolumeL, 1, 100_000) ??
    checkRange('waterReserveL', waterReserveL, 0, 0.9 * vesselVolumeL);
  if (refused) return err(refused);
  const lowestBarG = (vesselVolumeL * (preChargeBarG + 1)) / (vesselVolumeL - waterReserveL) - 1;
  const expandedShare = expandedWaterL(duty) / vesselVolumeL;
  const highestBarG = (endPressureBarG + 1) / (1 + (expandedShare * (endPressureBarG + 1)) / (preChargeBarG + 1)) - 1;
  return ok({ lowestBarG, highestBarG, isVesselTooSmall: lowestBarG > highestBarG });
}

export type VesselFillWindow = {
  readonly lowestBarG: BarGauge;
  readonly highestBarG: BarGauge;
  /** No pressure satisfies both ends. */
  readonly isVesselTooSmall: boolean;
};
