/** Row 10: inches of water column typed as mbar, or mbar as inches. */
import type { SuggestionCode } from '../finding.ts';
import { change, type MistakeRule, mistakeFinding } from './mistakeFinding.ts';
import { otherMeanings } from './otherUnit.ts';
import { isIn, plausibleRange } from './plausibleRanges.ts';

export const gasPressureUnit: MistakeRule = {
  row: 10,
  find: (context) => {
    const range = plausibleRange('inletPressureMbarG', context);
    if (range === null) return [];
    return context
      .all('inletPressureMbarG')
      .filter((one) => !isIn(one.value, range) && one.reading.comparator === '=')
      .flatMap((one) => {
        const meant = otherMeanings(one).filter(
          ({ unit, valueOwn }) => CODE_OF_UNIT[unit] !== undefined && isIn(valueOwn, range),
        );
        if (meant.length === 0) return [];
        return [
          mistakeFinding(
            {
              code: CODE_OF_UNIT[meant[0]?.unit ?? ''] ?? 'inches-as-mbar',
              about: [one],
              from: 'practice',
              rule: `outside ${range[0]}–${range[1]} mbar, and in another unit inside`,
              ask: 'the unit on the manometer: mbar or inches of water?',
              suggestions: meant.map(({ unit, valueOwn }) =>
                change(CODE_OF_UNIT[unit] ?? 'inches-as-mbar', [one, valueOwn]),
              ),
            },
            context,
          ),
        ];
      });
  },
};

/** By the unit that was meant. */
const CODE_OF_UNIT: Readonly<Record<string, SuggestionCode>> = { 'in w.c.': 'inches-as-mbar', mbar: 'mbar-as-inches' };
