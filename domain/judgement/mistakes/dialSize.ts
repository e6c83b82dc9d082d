/** Another dial than the one that was watched, or cubic feet for cubic metres: the input is a plain factor off. */
import { gasInput } from '../../gas/gasInput.ts';
import { CUBIC_METRES_PER_CUBIC_FOOT } from '../../quantity/conversions.ts';
import { siteRating } from '../computed/clockedInput.ts';
import { meteredVolumeFactor, meterReading } from '../computed/meterReading.ts';
import { change, type MistakeRule, mistakeFinding } from './mistakeFinding.ts';

/** Dials come in ½, 1, 2 and 5 ft³, 0.01, 0.1 and 1 m³. */
const FACTORS = [
  2,
  1 / 2,
  4,
  1 / 4,
  5,
  1 / 5,
  10,
  1 / 10,
  1 / CUBIC_METRES_PER_CUBIC_FOOT,
  CUBIC_METRES_PER_CUBIC_FOOT,
];
/** Adjustment, heating value and timing together; the smallest factor is 2. */
const SAME_WITHIN = 0.25;

export const dialSize: MistakeRule = {
  row: 15,
  find: (context) => {
    const meter = meterReading(context);
    const { dial, turns, seconds, heatingValueMjPerM3 } = meter;
    const rating = siteRating(meter.ratedInputKwGross, context);
    if (!dial || !turns || !seconds || heatingValueMjPerM3 === null || typeof rating === 'string') return [];
    const measured = gasInput({
      timing: { dialM3: dial.value, turns: turns.value, elapsedS: seconds.value },
      volumeFactor: meteredVolumeFactor(context).factor,
      heatingValueMjPerM3,
      basis: 'gross',
    });
    if (!measured.ok) return [];
    const ratio = measured.value.inputKw / rating;
    const [nearest] = FACTORS.toSorted((one, other) => distance(ratio, one) - distance(ratio, other));
    if (nearest === undefined || distance(ratio, nearest) > Math.log(1 + SAME_WITHIN)) return [];
    return [
      mistakeFinding(
        {
          code: 'dial-size',
          about: [dial, turns, seconds],
          from: 'practice',
          rule: 'the clocked input is a plain factor away from the rating',
          ask: 'the size printed on the dial, and its unit',
          inputs: { ratio, factor: nearest, siteRatingKw: rating },
          suggestions: [change('dial-size', [dial, dial.value / nearest])],
        },
        context,
      ),
    ];
  },
};

function distance(ratio: number, factor: number): number {
  return Math.abs(Math.log(ratio / factor));
}
