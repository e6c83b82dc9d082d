import { describe, expect, it } from 'vitest';
import type { ItemOf } from '../../../../domain/procedure/modelSheet.ts';
import { boxAfter, firstEmptyBox, seriesRows } from '../../../../renderer/run/items/seriesPlan.ts';
import { DAY_START, emptyRecord, reading, secondsAfter, withReading } from '../../../support/runRecordBuilder.ts';
import { anItem, aStep, tinySheet } from '../../../support/tinySheet.ts';

const sheet = tinySheet([
  aStep('combustion', [
    anItem('series', 'flue', {
      firingPoint: 'high',
      quantities: ['o2DryVolPct', 'coPpm'],
      optional: ['flueGasC'],
    }),
  ]),
]);
const item = sheet.startup[0]?.items[0] as ItemOf<'series'>;
const empty = emptyRecord('natural-gas');
const oneRow = withReading(
  withReading(empty, reading('flue', 'o2DryVolPct', 4.9, DAY_START)),
  reading('flue', 'coPpm', 40, secondsAfter(DAY_START, 8)),
);

describe('seriesRows', () => {
  it('asks for as many again after an adjustment, below what was read before it', () => {
    const since = secondsAfter(DAY_START, 600);
    expect(seriesRows(item, oneRow, sheet, 0, since).map(({ startedAt }) => startedAt)).toEqual([
      DAY_START,
      null,
      null,
    ]);
    expect(seriesRows(item, empty, sheet, 0, since)).toHaveLength(2);
  });

  it('shows as many rows as the sheet asks for, with the time the first box of each was read', () => {
    expect(seriesRows(item, oneRow, sheet, 0)).toEqual([
      { sample: 1, startedAt: DAY_START },
      { sample: 2, startedAt: null },
    ]);
  });

  it('shows every sample that was read, and the ones asked for besides', () => {
    const third = withReading(oneRow, reading('flue', 'coPpm', 41, DAY_START, { sample: 3 }));
    expect(seriesRows(item, third, sheet, 1).map((row) => row.sample)).toEqual([1, 2, 3, 4]);
  });
});

describe('firstEmptyBox', () => {
  it('is the next one in reading order; what need not be read is passed over', () => {
    const rows = seriesRows(item, oneRow, sheet, 0);
    expect(firstEmptyBox(item, empty, rows)).toEqual({ sample: 1, quantity: 'o2DryVolPct' });
    expect(firstEmptyBox(item, oneRow, rows)).toEqual({ sample: 2, quantity: 'o2DryVolPct' });
  });

  it('counts a replaced reading as none', () => {
    const replaced = withReading(empty, reading('flue', 'o2DryVolPct', 4.9, DAY_START, { supersededById: 'another' }));
    expect(firstEmptyBox(item, replaced, seriesRows(item, replaced, sheet, 0))?.sample).toBe(1);
  });
});

describe('boxAfter', () => {
  it('goes along the row, then to the next one, and ends after the last', () => {
    const rows = seriesRows(item, empty, sheet, 0);
    expect(boxAfter(item, rows, { sample: 1, quantity: 'coPpm' })).toEqual({ sample: 1, quantity: 'flueGasC' });
    expect(boxAfter(item, rows, { sample: 1, quantity: 'flueGasC' })).toEqual({ sample: 2, quantity: 'o2DryVolPct' });
    expect(boxAfter(item, rows, { sample: 2, quantity: 'flueGasC' })).toBeNull();
  });
});
