import type { BarGauge, Litre } from '../../quantity/units.ts';
import { checkRange, type OutOfRange } from '../../result.ts';

/** What the European vessel formulas need to know. All pressures gauge. */
export type VesselDuty = {
  readonly systemVolumeL: Litre;
  /** See `liquidExpansion`. */
  readonly expansionFraction: number;
  /** p0: nitrogen pressure with the water side empty. */
  readonly preChargeBarG: BarGauge;
  /** pe: highest normal hot pressure, see `highestNormalHotPressure`. */
  readonly endPressureBarG: BarGauge;
};

/** Water the system pushes into its vessel on heating: Ve = e·Vs. */
export function expandedWaterL(duty: Pick<VesselDuty, 'systemVolumeL' | 'expansionFraction'>): Litre {
  return duty.expansionFraction * duty.systemVolumeL;
}

export function checkVesselDuty(duty: VesselDuty): OutOfRange | null {
  return (
    checkRange('systemVolumeL', duty.systemVolumeL, 0, 1_000_000) ??
    checkRange('expansionFraction', duty.expansionFraction, 0, 0.2) ??
    checkRange('preChargeBarG', duty.preChargeBarG, 0, 16) ??
    checkRange('endPressureBarG', duty.endPressureBarG, duty.preChargeBarG + 0.01, 17)
  );
}
