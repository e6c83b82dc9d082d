/** Nothing typed, zero stored; or a zero where nothing in use reads zero. Missing is not zero. */
import type { QuantityKey } from '../../quantity/quantities.ts';
import type { Measured } from '../measured.ts';
import { type MistakeRule, mistakeFinding } from './mistakeFinding.ts';
import { typedNumber } from './otherUnit.ts';

/** In use these never read exactly zero; CO, a drop in a test, hardness and inhibitor well may. */
const NEVER_ZERO: readonly QuantityKey[] = [
  'o2DryVolPct',
  'co2DryVolPct',
  'flueGasC',
  'freshAirO2VolPct',
  'inletPressureMbarG',
  'systemPressureBarG',
  'supplyC',
  'returnC',
  'waterPh',
  'conductivityUsPerCm',
  'meterTurns',
  'meterSeconds',
  'supplyVoltageV',
  'mixedOutletC',
  'vesselPreChargeBarG',
];
/** Where the water side of the vessel is read at zero on purpose. */
const ZERO_ON_PURPOSE = 'water-side';

export const blankAsZero: MistakeRule = {
  row: 35,
  find: (context) =>
    context.measured
      .filter(
        (one) =>
          isZeroAsTyped(one) &&
          (!/\d/.test(one.reading.typedText) || (NEVER_ZERO.includes(one.quantity) && one.point !== ZERO_ON_PURPOSE)),
      )
      .map((one) =>
        mistakeFinding(
          {
            code: 'blank-as-zero',
            about: [one],
            from: 'practice',
            rule: 'zero with nothing typed, or where nothing in use reads zero',
            ask: 'read as zero, or not measured? Not measured needs a reason',
          },
          context,
        ),
      ),
};

/** What a conversion there and back leaves of a zero. */
const ROUNDING = 1e-6;

/** Zero on the scale it was typed on: 0 °F is no colder a blank than 0 °C. */
function isZeroAsTyped(one: Measured): boolean {
  if (Math.abs(one.value) < ROUNDING) return true;
  return !/[1-9]/.test(one.reading.typedText) && Math.abs(typedNumber(one)?.value ?? 1) < ROUNDING;
}
