/** A heating value that no gas has, with a digit too many or too few. */
import type { RunContext } from '../runContext.ts';
import { change, type MistakeRule, mistakeFinding } from './mistakeFinding.ts';
import { isIn, plausibleRange } from './plausibleRanges.ts';

export const heatingValueTimesTen: MistakeRule = {
  row: 16,
  find: (context) => {
    const range = plausibleRange('heatingValueMjPerM3', context);
    if (range === null) return [];
    return valuesOf(context)
      .filter(({ value }) => !isIn(value, range))
      .flatMap(({ value, reading }) => {
        const meant = [value / 10, value * 10].find((one) => isIn(one, range));
        if (meant === undefined) return [];
        return [
          mistakeFinding(
            {
              code: 'heating-value-times-ten',
              about: reading === undefined ? [] : [reading],
              from: 'practice',
              rule: `outside ${range[0]}–${range[1]} MJ/m³ for this gas, and ten times more or less is inside`,
              ask: 'the heating value on the supplier’s bill',
              inputs: { heatingValueMjPerM3: value, meantMjPerM3: meant },
              suggestions: [
                reading === undefined
                  ? { code: 'heating-value-times-ten', changes: [], needsNewReading: true }
                  : change('heating-value-times-ten', [reading, meant]),
              ],
            },
            context,
          ),
        ];
      });
  },
};

function valuesOf(context: RunContext) {
  const readings = context.all('heatingValueMjPerM3').map((reading) => ({ value: reading.value, reading }));
  const ofSite = context.record.site.heatingValueMjPerM3;
  return ofSite === null ? readings : [...readings, { value: ofSite, reading: undefined }];
}
