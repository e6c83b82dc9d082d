/** Inches of water column typed as mbar, or mbar as inches. */
import type { SuggestionCode } from '../finding.ts';
import { change, type MistakeRule, mistakeFinding } from './mistakeFinding.ts';
import { otherMeanings } from './otherUnit.ts';
import { isIn, plausibleRange } from './plausibleRanges.ts';

export const gasPressureUnit: MistakeRule = {
  row: 10,
  find: (context) =>
    context.all('inletPressureMbarG').flatMap((one) => {
      const range = plausibleRange(one.quantity, context, one.point);
      if (range === null || one.reading.comparator !== '=') return [];
      const standing = one.point === 'static' ? undefined : context.latest(one.quantity, 'static');
      const isOdd = !isIn(one.value, range) || (standing !== undefined && isFarFrom(one.value, standing.value));
      if (!isOdd) return [];
      const meant = otherMeanings(one).filter(
        ({ unit, valueOwn }) =>
          CODE_OF_UNIT[unit] !== undefined &&
          isIn(valueOwn, range) &&
          // A number that can't be by itself needs no second witness, who may be wrong in the same way.
          (!isIn(one.value, range) || standing === undefined || !isFarFrom(valueOwn, standing.value)),
      );
      const [first] = meant;
      if (first === undefined) return [];
      return [
        mistakeFinding(
          {
            code: codeOf(first.unit),
            about: [one],
            from: 'practice',
            rule: `outside ${range[0]}–${range[1]} mbar, or far from static, and in another unit where it belongs`,
            ask: 'the unit on the manometer: mbar or inches of water?',
            suggestions: meant.map(({ unit, valueOwn }) => change(codeOf(unit), [one, valueOwn])),
          },
          context,
        ),
      ];
    }),
};

/** A supply that holds loses a tenth or two to full load; less than two thirds of static is a fault or another unit. */
const FLOWING_TO_STANDING: readonly [number, number] = [0.67, 1.5];

function isFarFrom(flowing: number, standing: number): boolean {
  return standing > 0 && !isIn(flowing / standing, FLOWING_TO_STANDING);
}

/** By the unit that was meant. */
const CODE_OF_UNIT: Readonly<Record<string, SuggestionCode>> = { 'in w.c.': 'inches-as-mbar', mbar: 'mbar-as-inches' };

function codeOf(unit: string): SuggestionCode {
  return CODE_OF_UNIT[unit] ?? 'inches-as-mbar';
}
