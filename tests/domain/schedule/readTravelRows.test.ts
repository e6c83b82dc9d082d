/** A table of travel times as somebody brings it: read whole, or every wrong line named. */
import { describe, expect, it } from 'vitest';
import { readTravelRows } from '../../../domain/schedule/readTravelRows.ts';

const rows = (...lines: readonly (readonly string[])[]) => lines.map((cells, index) => ({ row: index + 2, cells }));

describe('readTravelRows', () => {
  it('takes the columns in any order, beside others, and the same line twice', () => {
    const read = readTravelRows(
      ['Minutes', 'Note', 'TO', 'From'],
      rows(
        ['25', '', 'Farrow Mills', 'Graven Bay'],
        ['25', 'again', 'farrow  mills', 'GRAVEN BAY'],
        ['0', '', 'A', 'B'],
      ),
    );
    expect(read).toEqual({
      ok: true,
      value: [
        { from: 'Graven Bay', to: 'Farrow Mills', minutes: 25 },
        { from: 'B', to: 'A', minutes: 0 },
      ],
    });
  });

  it('names the columns that are missing', () => {
    expect(readTravelRows(['start', 'to', 'km'], rows(['a', 'b', '3']))).toEqual({
      ok: false,
      error: { code: 'columns-missing', missing: ['from', 'minutes'] },
    });
  });

  it('names every wrong line by its row', () => {
    const read = readTravelRows(
      ['from', 'to', 'minutes'],
      rows(
        ['', 'B', '5'],
        ['A', ' - ', '5'],
        ['A', 'B', '1.5'],
        ['A', 'B', '-3'],
        ['A', 'B'],
        ['A', 'B', '601'],
        ['A', 'B', '7'],
        ['a', 'b', '8'],
      ),
    );
    expect(read).toEqual({
      ok: false,
      error: {
        code: 'lines-wrong',
        lines: [
          { row: 2, code: 'name-missing', column: 'from' },
          { row: 3, code: 'name-missing', column: 'to' },
          { row: 4, code: 'not-whole-minutes', typed: '1.5' },
          { row: 5, code: 'not-whole-minutes', typed: '-3' },
          { row: 6, code: 'not-whole-minutes', typed: '' },
          { row: 7, code: 'not-whole-minutes', typed: '601' },
          { row: 9, code: 'said-otherwise', earlierRow: 8 },
        ],
      },
    });
  });
});
