import type { BarGauge, Litre } from '../../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../../result.ts';

/** A vessel that is there, seen as a gas cushion. */
export type VesselGas = {
  readonly vesselVolumeL: Litre;
  readonly preChargeBarG: BarGauge;
  /** Air pressure at the site; 1.013 bar unless given. */
  readonly atmosphericPressureBarAbs?: number;
};

/**
 * Gas left in the vessel at a system pressure.
 *
 * Formula  Vg = Vt(p0 + p_atm)/(p + p_atm); the whole vessel while p ≤ p0
 * Units    L, bar gauge; L
 * Valid    isothermal gas, sound diaphragm; vessel 0.5–100 000 L, pre-charge and pressure 0–20 bar gauge, air
 *          0.5–1.1 bar; outside it an error, never a number
 * Source   gas law
 * Checked  through E10–E14
 */
export function vesselGasVolume(vessel: VesselGas & { readonly pressureBarG: BarGauge }): Result<Litre, OutOfRange> {
  const { vesselVolumeL, preChargeBarG, pressureBarG, atmosphericPressureBarAbs = STANDARD_AIR_BAR } = vessel;
  const refused = checkVesselGas(vessel) ?? checkRange('pressureBarG', pressureBarG, 0, 20);
  if (refused) return err(refused);
  const preChargeBarAbs = preChargeBarG + atmosphericPressureBarAbs;
  return ok((vesselVolumeL * preChargeBarAbs) / (Math.max(pressureBarG, preChargeBarG) + atmosphericPressureBarAbs));
}

/**
 * Water held by the vessel at a system pressure; between two pressures, the litres lost or taken.
 *
 * Formula  Vt[1 − (p0 + p_atm)/(p + p_atm)]; 0 when p ≤ p0
 * Units    L, bar gauge; L
 * Valid    as `vesselGasVolume`
 * Source   gas law
 * Checked  tests/checks/hydronics/vesselRows.ts E13, E14
 */
export function vesselWaterHeld(vessel: VesselGas & { readonly pressureBarG: BarGauge }): Result<Litre, OutOfRange> {
  const gas = vesselGasVolume(vessel);
  return gas.ok ? ok(vessel.vesselVolumeL - gas.value) : gas;
}

/**
 * Pressure the hot system will reach with this vessel.
 *
 * Formula  p_hot = (pc + p_atm)·Vg/(Vg − Ve) − p_atm, Vg the gas left at the cold pressure pc.
 *          A cold pressure below the pre-charge counts as the pre-charge: the vessel is then empty of water.
 *          Warming of the gas adds a few percent
 * Units    L, bar gauge; bar gauge
 * Valid    as `vesselGasVolume`, expansion 0 to 95 % of the gas left; outside it an error, never a number
 * Source   gas law
 * Checked  tests/checks/hydronics/vesselRows.ts E10–E12
 */
export function vesselHotPressure(
  vessel: VesselGas & { readonly coldPressureBarG: BarGauge; readonly expandedWaterL: Litre },
): Result<BarGauge, OutOfRange> {
  const { preChargeBarG, coldPressureBarG, expandedWaterL, atmosphericPressureBarAbs = STANDARD_AIR_BAR } = vessel;
  const gas = vesselGasVolume({ ...vessel, pressureBarG: coldPressureBarG });
  if (!gas.ok) return gas;
  const refused = checkRange('expandedWaterL', expandedWaterL, 0, 0.95 * gas.value);
  if (refused) return err(refused);
  const gasBarAbs = Math.max(coldPressureBarG, preChargeBarG) + atmosphericPressureBarAbs;
  return ok((gasBarAbs * gas.value) / (gas.value - expandedWaterL) - atmosphericPressureBarAbs);
}

/**
 * Pre-charge a vessel really has, from what the gauge shows cold and hot. With a torn diaphragm the answer is the cold
 * pressure, whatever the readings.
 *
 * Formula  Vg = Ve(ph + p_atm)/(ph − pc); p0 = Vg(pc + p_atm)/Vt − p_atm
 * Units    L, bar gauge; bar gauge
 * Valid    cold 0–20 bar gauge, hot above it by at least 0.02 bar; an error too when the readings need more gas than the
 *          vessel has room for, which means that a volume or a reading is wrong
 * Source   gas law, inverse of `vesselHotPressure`
 * Checked  tests/checks/hydronics/trendRows.ts M3
 */
export function effectivePreCharge(vessel: {
  readonly vesselVolumeL: Litre;
  readonly coldPressureBarG: BarGauge;
  readonly hotPressureBarG: BarGauge;
  readonly expandedWaterL: Litre;
  readonly atmosphericPressureBarAbs?: number;
}): Result<BarGauge, OutOfRange> {
  const { vesselVolumeL, coldPressureBarG, hotPressureBarG, expandedWaterL } = vessel;
  const atmosphericPressureBarAbs = vessel.atmosphericPressureBarAbs ?? STANDARD_AIR_BAR;
  const refused =
    checkRange('vesselVolumeL', vesselVolumeL, 0.5, 100_000) ??
    checkRange('atmosphericPressureBarAbs', atmosphericPressureBarAbs, 0.5, 1.1) ??
    checkRange('coldPressureBarG', coldPressureBarG, 0, 20) ??
    checkRange('hotPressureBarG', hotPressureBarG, coldPressureBarG + 0.02, 40) ??
    checkRange('expandedWaterL', expandedWaterL, 0.001, 10_000);
  if (refused) return err(refused);
  const gasVolumeL =
    (expandedWaterL * (hotPressureBarG + atmosphericPressureBarAbs)) / (hotPressureBarG - coldPressureBarG);
  const refusedGas = checkRange('gasVolumeL', gasVolumeL, 0, vesselVolumeL);
  if (refusedGas) return err(refusedGas);
  return ok((gasVolumeL * (coldPressureBarG + atmosphericPressureBarAbs)) / vesselVolumeL - atmosphericPressureBarAbs);
}

/** The air pressure the check values are worked out with. */
const STANDARD_AIR_BAR = 1.013;

function checkVesselGas(vessel: VesselGas): OutOfRange | null {
  return (
    checkRange('vesselVolumeL', vessel.vesselVolumeL, 0.5, 100_000) ??
    checkRange('preChargeBarG', vessel.preChargeBarG, 0, 20) ??
    checkRange('atmosphericPressureBarAbs', vessel.atmosphericPressureBarAbs ?? STANDARD_AIR_BAR, 0.5, 1.1)
  );
}
