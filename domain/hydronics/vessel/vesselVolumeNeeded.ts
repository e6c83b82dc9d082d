import type { Litre } from '../../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../../result.ts';
import { checkVesselDuty, expandedWaterL, type VesselDuty } from './vesselDuty.ts';
import { waterReserve } from './waterReserve.ts';

/**
 * Smallest diaphragm vessel by the European form.
 *
 * Formula  VN,min = (Ve + VWR)·(pe + 1)/(pe − p0), Ve = e·Vs. Leaves the pipes' growth out, which is the cautious side
 * Units    L, bar gauge; L
 * Valid    water below 100 °C, system 0–1 000 000 L, expansion 0–0.2, p0 0–16 bar gauge, pe at least 0.01 bar above it,
 *          reserve 0–10 000 L; outside it an error, never a number
 * Source   EN 12828, formula from memory
 * Checked  tests/checks/hydronics/vesselRows.ts E6–E8
 */
export function vesselVolumeNeeded(duty: VesselDuty & { readonly waterReserveL: Litre }): Result<Litre, OutOfRange> {
  const refused = checkVesselDuty(duty) ?? checkRange('waterReserveL', duty.waterReserveL, 0, 10_000);
  if (refused) return err(refused);
  const { preChargeBarG, endPressureBarG, waterReserveL } = duty;
  return ok(((expandedWaterL(duty) + waterReserveL) * (endPressureBarG + 1)) / (endPressureBarG - preChargeBarG));
}

/**
 * Smallest vessel in the shops that is large enough with its own reserve; undefined when none is.
 *
 * Formula  first size VN with vesselVolumeNeeded(reserve of VN) ≤ VN
 * Units    L
 * Valid    as `vesselVolumeNeeded`
 * Source   usual catalogue sizes, common practice, no source
 * Checked  tests/checks/hydronics/vesselRows.ts E6, E7
 */
export function vesselSizeToChoose(duty: VesselDuty): Result<Litre | undefined, OutOfRange> {
  for (const sizeL of USUAL_SIZES_L) {
    const reserve = waterReserve({ systemVolumeL: duty.systemVolumeL, vesselVolumeL: sizeL });
    if (!reserve.ok) return reserve;
    const needed = vesselVolumeNeeded({ ...duty, waterReserveL: reserve.value });
    if (!needed.ok) return needed;
    if (needed.value <= sizeL) return ok(sizeL);
  }
  return ok(undefined);
}

const USUAL_SIZES_L: readonly Litre[] = [8, 12, 18, 25, 35, 50, 80, 100, 140, 200, 250, 300, 400, 500, 600, 800, 1000];
