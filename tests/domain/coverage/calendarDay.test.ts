/** Against Temporal, the standard's own arithmetic of the ISO calendar: every day of two eras, the turns of the years 0 and 9999. */
import { Temporal } from 'temporal-polyfill';
import { describe, expect, it } from 'vitest';
import { calendarDayOf, calendarDayText, dayNumberOf, readCalendarDay } from '../../../domain/coverage/calendarDay.ts';
import { addDays, addMonths, weekdayOf } from '../../../domain/coverage/period.ts';

const EPOCH = Temporal.PlainDate.from('1970-01-01');

describe('days of the calendar as numbers', () => {
  it('are Temporal’s, there and back, on every day from 1600 to 2400', () => {
    const first = EPOCH.until('1600-01-01').days;
    const last = EPOCH.until('2400-12-31').days;
    let date = Temporal.PlainDate.from('1600-01-01');
    let wrong = 0;
    for (let number = first; number <= last; number += 1) {
      const text = date.toString();
      if (calendarDayText(calendarDayOf(number)) !== text || dayNumberOf(readCalendarDay(text)) !== number) wrong += 1;
      if (weekdayOf(text) !== date.dayOfWeek) wrong += 1;
      date = date.add({ days: 1 });
    }
    expect(wrong).toBe(0);
    expect(last - first).toBeGreaterThan(292_000);
  });

  it.each(['0000-01-01', '0000-02-29', '0000-03-01', '0001-01-01', '9999-12-31'])('hold at %s', (text) => {
    expect(dayNumberOf(readCalendarDay(text))).toBe(EPOCH.until(text, { largestUnit: 'days' }).days);
    expect(calendarDayText(calendarDayOf(dayNumberOf(readCalendarDay(text))))).toBe(text);
  });

  it('add months as Temporal does, from every day of a leap year and the one after', () => {
    for (let at = 0; at < 731; at += 1) {
      const from = Temporal.PlainDate.from('2024-01-01').add({ days: at });
      for (const months of [-25, -12, -1, 0, 1, 6, 11, 12, 13, 24, 48])
        expect(addMonths(from.toString(), months)).toBe(from.add({ months }, { overflow: 'constrain' }).toString());
    }
  });

  it.each([
    '',
    '2026-02-30',
    '2025-02-29',
    '2026-13-01',
    '2026-00-10',
    '2026-1-01',
    '2026-01-01T00',
    'x026-01-01',
    '20260101',
  ])('throw on %j, as Temporal does on days that are none', (text) => {
    expect(() => addDays(text, 1)).toThrow(RangeError);
    expect(() => addMonths(text, 1)).toThrow(RangeError);
  });

  it('never leave the years a store can hold', () => {
    expect(() => addDays('9999-12-31', 1)).toThrow(RangeError);
    expect(() => addMonths('0000-01-31', -1)).toThrow(RangeError);
  });
});
