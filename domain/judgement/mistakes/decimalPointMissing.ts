/** Ten times too much, because a point or comma was left out. What is beyond the possible the entry box refuses already. */
import type { Measured } from '../measured.ts';
import type { RunContext } from '../runContext.ts';
import { change, type MistakeRule, mistakeFinding } from './mistakeFinding.ts';
import { otherMeanings } from './otherUnit.ts';
import { CONDENSING_FLUE_MAX_C, isCondensing, isIn, type PlausibleRange, plausibleRange } from './plausibleRanges.ts';

export const decimalPointMissing: MistakeRule = {
  row: 7,
  find: (context) =>
    context.measured.flatMap((one) => {
      const range = rangeOf(one, context);
      if (range === null || one.reading.comparator !== '=' || one.value <= range[1]) return [];
      const tenth = one.value / 10;
      if (!isIn(tenth, range) || /[.,]\d/.test(one.reading.typedText)) return [];
      // Another unit explains it just as well: the rule for units asks.
      if (otherMeanings(one).some(({ valueOwn }) => isIn(valueOwn, range))) return [];
      return [
        mistakeFinding(
          {
            code: 'decimal-point-missing',
            about: [one],
            from: 'practice',
            rule: `more than is ever seen (${range[0]}–${range[1]} in the quantity’s own unit), and a tenth of it is usual`,
            ask: 'a decimal point left out?',
            suggestions: [change('decimal-point-missing', [one, tenth])],
          },
          context,
        ),
      ];
    }),
};

/** A condensing boiler's flue gas lies between its return and well below what the vent bears. */
function rangeOf(one: Measured, context: RunContext): PlausibleRange | null {
  if (one.quantity === 'flueGasC') return isCondensing(context) ? [20, CONDENSING_FLUE_MAX_C] : null;
  return plausibleRange(one.quantity, context, one.point);
}
