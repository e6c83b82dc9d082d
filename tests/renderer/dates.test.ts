import { Temporal } from 'temporal-polyfill';
import { describe, expect, it } from 'vitest';
import { readDay } from '../../renderer/form/FormReader.ts';
import { impreciseDayWords, readImpreciseDay } from '../../renderer/form/impreciseDay.ts';
import { durationWords, readDuration, readTime } from '../../renderer/form/readTime.ts';
import { dayWords, instantWords } from '../../renderer/kit/dayWords.ts';
import { mondayOf, weekOf } from '../../renderer/visits/week.ts';

const today = Temporal.PlainDate.from('2026-07-04');

describe('readDay', () => {
  it.each([
    ['4 Jul 2026', '2026-07-04'],
    ['2026-07-04', '2026-07-04'],
    ['July 4, 2026', '2026-07-04'],
    ['25/12/2026', '2026-12-25'],
    ['today', '2026-07-04'],
    ['Tomorrow', '2026-07-05'],
  ])('should read %s', (text, day) => {
    expect(readDay(text, today)).toEqual({ ok: true, day });
  });

  it('should ask where day and month could be swapped', () => {
    expect(readDay('04/07/2026', today)).toMatchObject({ ok: false, meanings: ['2026-07-04', '2026-04-07'] });
  });

  it('should tell nothing typed from something unreadable', () => {
    expect(readDay(' ', today)).toEqual({ ok: true, day: null });
    expect(readDay('31 Feb 2026', today)).toMatchObject({ ok: false });
  });

  it('should read back every day it writes', () => {
    for (let day = today; day.year < 2029; day = day.add({ days: 1 })) {
      expect(readDay(dayWords(day.toString()), today)).toEqual({ ok: true, day: day.toString() });
    }
  });
});

describe('readImpreciseDay', () => {
  it.each([
    ['2025', '2025-01-01', 'year'],
    ['10/2025', '2025-10-01', 'month'],
    ['2025-10', '2025-10-01', 'month'],
    ['Oct 2025', '2025-10-01', 'month'],
    ['14 Oct 2025', '2025-10-14', 'day'],
  ] as const)('should read %s', (text, on, precision) => {
    const read = readImpreciseDay(text);
    expect(read).toEqual({ ok: true, date: { on, precision } });
    expect(readImpreciseDay(impreciseDayWords({ on, precision }))).toEqual(read);
  });

  it.each(['13/2025', '04/07/2025', 'soon', ''])('should refuse %j', (text) => {
    expect(readImpreciseDay(text)).toMatchObject({ ok: false });
  });
});

describe('times and lengths of time', () => {
  it.each([
    ['8', '08:00'],
    ['8:30', '08:30'],
    ['0830', '08:30'],
    ['2 pm', '14:00'],
    ['12 am', '00:00'],
    ['', null],
    ['25:00', undefined],
    ['8:75', undefined],
  ])('should read the time %j', (text, time) => {
    expect(readTime(text)).toBe(time);
  });

  it.each([
    ['2:30', 150],
    ['2 h 30', 150],
    ['2,5 h', 150],
    ['90 min', 90],
    ['3', 180],
    ['240', 240],
    ['long', null],
  ])('should read the length %j', (text, minutes) => {
    expect(readDuration(text)).toBe(minutes);
  });

  it('should read back every length it writes', () => {
    for (let minutes = 1; minutes <= 5760; minutes += 1) expect(readDuration(durationWords(minutes))).toBe(minutes);
  });
});

describe('days in words', () => {
  it('should put the month as a word', () => {
    expect(dayWords('2026-07-04')).toBe('4 Jul 2026');
    // 4 July 2026 is a Saturday (any perpetual calendar).
    expect(dayWords('2026-07-04', { weekday: true })).toBe('Sat 4 Jul 2026');
  });

  it('should show an instant in the zone asked for', () => {
    // Toronto is at UTC−4 in July.
    expect(instantWords('2026-07-05T02:05:00Z', 'America/Toronto')).toBe('4 Jul 2026, 22:05');
  });

  it('should begin weeks on Monday, over a change of year too', () => {
    expect(mondayOf('2026-07-05')).toBe('2026-06-29');
    expect(weekOf('2027-01-01')).toEqual([
      '2026-12-28',
      '2026-12-29',
      '2026-12-30',
      '2026-12-31',
      '2027-01-01',
      '2027-01-02',
      '2027-01-03',
    ]);
  });
});
