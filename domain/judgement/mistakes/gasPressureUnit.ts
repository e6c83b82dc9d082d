/** Row 10: inches of water column typed as mbar, or mbar as inches. */
import type { SuggestionCode } from '../finding.ts';
import { change, type MistakeRule, mistakeFinding } from './mistakeFinding.ts';
import { otherMeanings } from './otherUnit.ts';
import { isIn, plausibleRange } from './plausibleRanges.ts';

export const gasPressureUnit: MistakeRule = {
  row: 10,
  find: (context) =>
    context.all('inletPressureMbarG').flatMap((one) => {
      const range = plausibleRange(one.quantity, context, one.point);
      if (range === null || isIn(one.value, range) || one.reading.comparator !== '=') return [];
      const meant = otherMeanings(one).filter(
        ({ unit, valueOwn }) => CODE_OF_UNIT[unit] !== undefined && isIn(valueOwn, range),
      );
      const [first] = meant;
      if (first === undefined) return [];
      return [
        mistakeFinding(
          {
            code: codeOf(first.unit),
            about: [one],
            from: 'practice',
            rule: `outside ${range[0]}–${range[1]} mbar, and in another unit inside`,
            ask: 'the unit on the manometer: mbar or inches of water?',
            suggestions: meant.map(({ unit, valueOwn }) => change(codeOf(unit), [one, valueOwn])),
          },
          context,
        ),
      ];
    }),
};

/** By the unit that was meant. */
const CODE_OF_UNIT: Readonly<Record<string, SuggestionCode>> = { 'in w.c.': 'inches-as-mbar', mbar: 'mbar-as-inches' };

function codeOf(unit: string): SuggestionCode {
  return CODE_OF_UNIT[unit] ?? 'inches-as-mbar';
}
