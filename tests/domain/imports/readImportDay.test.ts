/** Dates of lists. Which day a text means is read off ISO 8601 and off a calendar, never off our own reader. */
import { describe, expect, it } from 'vitest';
import { readImportDay } from '../../../domain/imports/readImportDay.ts';

describe('readImportDay', () => {
  it.each([
    ['2024-02-29', null, '2024-02-29', 'day'],
    ['2024-03-04 00:00:00', null, '2024-03-04', 'day'],
    ['2024-03-04T00:00:00.000Z', null, '2024-03-04', 'day'],
    ['25/12/2023', null, '2023-12-25', 'day'],
    ['12/25/2023', null, '2023-12-25', 'day'],
    ['05/05/2023', null, '2023-05-05', 'day'],
    ['04.03.2024', null, '2024-03-04', 'day'],
    ['03/04/2024', 'day-first', '2024-04-03', 'day'],
    ['03/04/2024', 'month-first', '2024-03-04', 'day'],
    ['4 Mar 2024', null, '2024-03-04', 'day'],
    ['March 4, 2024', 'day-first', '2024-03-04', 'day'],
    ['1er août 2023', null, '2023-08-01', 'day'],
    ['12 févr. 2023', null, '2023-02-12', 'day'],
    ['3-ene-2023', null, '2023-01-03', 'day'],
    ['2019', null, '2019-01-01', 'year'],
    ['2019-07', null, '2019-07-01', 'month'],
    ['07/2019', null, '2019-07-01', 'month'],
  ] as const)('%s (%s) is %s', (text, order, on, precision) => {
    expect(readImportDay(text, order)).toEqual({ ok: true, value: { on, precision } });
  });

  it('asks where day and month can be meant both ways', () => {
    expect(readImportDay('03/04/2024', null)).toEqual({
      ok: false,
      error: { code: 'day-month-ambiguous', readings: ['2024-04-03', '2024-03-04'] },
    });
  });

  it.each([
    ['2023-02-29', null, 'not-a-day'],
    ['31/04/2024', null, 'not-a-day'],
    ['25/12/2023', 'month-first', 'not-a-day'],
    ['12/25/2023', 'day-first', 'not-a-day'],
    ['2024-13', null, 'not-a-day'],
    ['2024-03-04 14:30', null, 'not-a-day'],
    ['45000', null, 'not-a-day'],
    ['last spring', null, 'not-a-day'],
    ['4 Foo 2024', null, 'not-a-day'],
    ['03/04/24', 'day-first', 'short-year'],
    ['3.4.24', null, 'short-year'],
  ] as const)('refuses %s (%s): %s', (text, order, code) => {
    expect(readImportDay(text, order)).toEqual({ ok: false, error: { code } });
  });
});
