/** psi, bar and kPa mixed up on the water side. */
import type { QuantityKey } from '../../quantity/quantities.ts';
import type { SuggestionCode } from '../finding.ts';
import { change, type MistakeRule, mistakeFinding } from './mistakeFinding.ts';
import { otherMeanings } from './otherUnit.ts';
import { isIn, plausibleRange } from './plausibleRanges.ts';

const PRESSURES: readonly QuantityKey[] = ['systemPressureBarG', 'vesselPreChargeBarG', 'reliefSettingBarG'];

export const systemPressureUnit: MistakeRule = {
  row: 11,
  find: (context) =>
    PRESSURES.flatMap((quantity) => {
      const range = plausibleRange(quantity, context);
      if (range === null) return [];
      return context
        .all(quantity)
        .filter((one) => !isIn(one.value, range) && one.reading.comparator === '=')
        .flatMap((one) => {
          const meant = otherMeanings(one).filter(({ valueOwn }) => isIn(valueOwn, range));
          const [first] = meant;
          if (first === undefined) return [];
          return [
            mistakeFinding(
              {
                code: codeOf(first.unit),
                about: [one],
                from: 'practice',
                rule: `outside ${range[0]}–${range[1]} bar, and in another unit inside`,
                ask: 'the unit on the gauge: bar, psi or kPa?',
                inputs: { meantIn: meant.map(({ unit }) => unit).join(', ') },
                suggestions: meant.map(({ unit, valueOwn }) => change(codeOf(unit), [one, valueOwn])),
              },
              context,
            ),
          ];
        });
    }),
};

/** By the unit that was meant. */
function codeOf(unit: string): SuggestionCode {
  return unit === 'bar' ? 'bar-as-psi' : 'psi-as-bar';
}
