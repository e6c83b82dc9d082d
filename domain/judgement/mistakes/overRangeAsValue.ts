/** The display stood at its end and was written down as if it were a measurement. */
import { type MistakeRule, mistakeFinding } from './mistakeFinding.ts';

export const overRangeAsValue: MistakeRule = {
  row: 5,
  find: (context) =>
    context.measured.flatMap((one) => {
      const rangeMax = context.instrument(one.reading.instrumentId)?.rangeMax[one.quantity];
      if (rangeMax === undefined || one.reading.comparator !== '=' || one.value < rangeMax) return [];
      return [
        mistakeFinding(
          {
            code: 'over-range-written-as-value',
            about: [one],
            from: 'physics',
            rule: 'the value is the end of the instrument’s range or beyond it',
            ask: 'over range? Then it is “>”, at least that much',
            inputs: { rangeMax },
          },
          context,
        ),
      ];
    }),
};
