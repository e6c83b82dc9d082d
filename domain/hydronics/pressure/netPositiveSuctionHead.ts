import { PA_PER_BAR, STANDARD_ATMOSPHERE_KPA, STANDARD_GRAVITY_M_PER_S2 } from '../../quantity/conversions.ts';
import type { BarGauge, Celsius, KpaAbs, Metre } from '../../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../../result.ts';
import { waterProperties, waterVapourPressure } from '../fluid/waterProperties.ts';

/**
 * Suction head left to a pump before its water boils: what the pump's sheet calls NPSH available.
 *
 * Formula  (p_atm + p_gauge − p_v)/(ρ·g) − suction loss. Altitude counts here, through the air pressure
 * Units    °C, bar gauge, kPa absolute, m; m of water. Below zero the water boils at the suction
 * Valid    water 0–120 °C, −1 to 20 bar gauge, air 50–110 kPa, loss 0–100 m; outside it an error, never a number
 * Source   definition, properties from IAPWS
 * Checked  tests/checks/hydronics/pressureRows.ts P8–P10
 */
export function netPositiveSuctionHead(suction: {
  readonly waterC: Celsius;
  readonly suctionBarG: BarGauge;
  readonly atmosphericPressureKpaAbs?: KpaAbs;
  readonly suctionLossM?: Metre;
}): Result<Metre, OutOfRange> {
  const { waterC, suctionBarG, atmosphericPressureKpaAbs = STANDARD_ATMOSPHERE_KPA, suctionLossM = 0 } = suction;
  const refused =
    checkRange('suctionBarG', suctionBarG, -1, 20) ??
    checkRange('atmosphericPressureKpaAbs', atmosphericPressureKpaAbs, 50, 110) ??
    checkRange('suctionLossM', suctionLossM, 0, 100);
  if (refused) return err(refused);
  const water = waterProperties({ temperatureC: waterC });
  if (!water.ok) return water;
  const vapour = waterVapourPressure({ temperatureC: waterC });
  if (!vapour.ok) return vapour;
  const overVapourPa = suctionBarG * PA_PER_BAR + (atmosphericPressureKpaAbs - vapour.value) * 1000;
  return ok(overVapourPa / (water.value.densityKgPerM3 * STANDARD_GRAVITY_M_PER_S2) - suctionLossM);
}
