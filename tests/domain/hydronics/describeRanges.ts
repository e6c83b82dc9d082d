/** Holds a calculation to the range its header promises: a number at both ends, an error just outside and for what is no number. */
import { describe, expect, it } from 'vitest';
import type { OutOfRange, Result } from '../../../domain/result.ts';

/** Field, lowest, highest (null: no end of its own), and what else must be set for the ends to be reachable. */
export type RangeOf<I> = readonly [
  field: keyof I & string,
  lowest: number | null,
  highest: number | null,
  alongside?: Partial<I>,
];

export function describeRanges<I extends object>(
  title: string,
  calculate: (input: I) => Result<unknown, OutOfRange | { readonly code: string }>,
  valid: I,
  ranges: readonly RangeOf<I>[],
): void {
  describe(`${title}: range`, () => {
    it('answers in the middle', () => {
      expect(calculate(valid)).toMatchObject({ ok: true });
    });

    describe.each(ranges.map(([field, ...rest]) => [field, rest] as const))(
      '%s',
      (field, [lowest, highest, alongside]) => {
        const at = (value: number) => calculate({ ...valid, ...alongside, [field]: value });

        it.each([Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY])('refuses %s', (value) => {
          expect(at(value)).toMatchObject({ ok: false, error: { code: 'out-of-range' } });
        });
        if (lowest !== null) {
          it(`answers at ${lowest} and refuses less`, () => {
            expectSoundAnswer(at(lowest));
            expect(at(lowest - stepFrom(lowest))).toMatchObject({ ok: false, error: { code: 'out-of-range' } });
          });
        }
        if (highest !== null) {
          it(`answers at ${highest} and refuses more`, () => {
            expectSoundAnswer(at(highest));
            expect(at(highest + stepFrom(highest))).toMatchObject({ ok: false, error: { code: 'out-of-range' } });
          });
        }
      },
    );
  });
}

/** Every number in an answer is finite. */
export function expectSoundAnswer(result: Result<unknown, unknown>): void {
  expect(result).toMatchObject({ ok: true });
  if (result.ok) expectFinite(result.value);
}

function expectFinite(value: unknown): void {
  if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true);
  else if (typeof value === 'object' && value !== null) Object.values(value).forEach(expectFinite);
}

/** Small beside any bound, large beside rounding. */
function stepFrom(bound: number): number {
  return Math.max(Math.abs(bound) * 1e-6, 1e-6);
}
