/**
 * One row of a check table: an outside number, its tolerance as printed, and the call that must reach it.
 * See README.md in this folder for the documents, the marks and how to add a row.
 */
import { describe, expect, it } from 'vitest';

export type CheckRow = {
  readonly id: string;
  /** The inputs in words, as the table prints them. */
  readonly inputs: string;
  readonly quantity: string;
  /** As printed in the source; never nudged towards our output. */
  readonly expected: number;
  /** Absolute, in the unit of `expected`; or a share of it, where the source states one (0.005 is ±0.5 %). */
  readonly tolerance: number | { readonly relative: number };
  /** P: the number itself is published, or follows from published ones by one division. C: computed by us, elsewhere. */
  readonly kind: 'P' | 'C';
  readonly source: string;
  /** The source's figure was quoted from memory and nobody has opened the document yet. */
  readonly fromMemory?: true;
  readonly compute: () => number;
};

/** One test per row, published and computed rows apart; the counts guard against a table that has lost its rows. */
export function describeCheckRows(
  title: string,
  rows: readonly CheckRow[],
  counts: { readonly published: number; readonly computed: number },
): void {
  describe(title, () => {
    const published = rows.filter((row) => row.kind === 'P');
    const computed = rows.filter((row) => row.kind === 'C');

    if (published.length > 0) describe('published values (P)', () => testEach(published));
    if (computed.length > 0) describe('computed elsewhere (C)', () => testEach(computed));

    it(`has ${counts.published} published and ${counts.computed} computed rows, each with its own id`, () => {
      expect({ published: published.length, computed: computed.length }).toEqual(counts);
      expect(new Set(rows.map((row) => row.id)).size).toBe(rows.length);
    });
  });
}

function testEach(rows: readonly CheckRow[]): void {
  for (const row of rows) {
    it(`${row.id} ${row.quantity} (${row.source}${row.fromMemory ? ', from memory' : ''})`, () => {
      const actual = row.compute();
      const allowed =
        typeof row.tolerance === 'number' ? row.tolerance : Math.abs(row.expected) * row.tolerance.relative;
      // Not `> allowed`: that form would let NaN pass.
      const isWithin = Math.abs(actual - row.expected) <= allowed;
      expect(isWithin, `${row.inputs}: expected ${row.expected} ± ${allowed}, got ${actual}`).toBe(true);
    });
  }
}
