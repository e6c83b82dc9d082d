/** The two days on which the clock changes, worked by hand (Ontario, 2026: 8 March forward, 1 November back, at 02:00). */
import { describe, expect, it } from 'vitest';
import {
  addDays,
  daysBetween,
  minuteOfWallTime,
  minutesOfDay,
  wallTimeOfMinute,
} from '../../../domain/schedule/dayMinutes.ts';

const ZONE = 'America/Toronto';

describe('minutes of a day', () => {
  it.each([
    ['2026-06-01', 1440, 540],
    ['2026-03-08', 1380, 480],
    ['2026-11-01', 1500, 600],
  ])('%s has %i minutes, and nine in the morning is minute %i', (date, minutes, nine) => {
    expect(minutesOfDay(date, ZONE)).toBe(minutes);
    expect(minuteOfWallTime(date, '09:00', ZONE)).toBe(nine);
    expect(wallTimeOfMinute(date, nine, ZONE)).toBe('09:00');
    expect(wallTimeOfMinute(date, 0, ZONE)).toBe('00:00');
  });

  it('moves a wall time on that the clock skips, and takes the first of two', () => {
    expect(wallTimeOfMinute('2026-03-08', minuteOfWallTime('2026-03-08', '02:30', ZONE), ZONE)).toBe('03:30');
    expect(minuteOfWallTime('2026-11-01', '01:30', ZONE)).toBe(90);
    expect(wallTimeOfMinute('2026-11-01', 150, ZONE)).toBe('01:30');
  });

  it('counts days across months, years and the change of the clock', () => {
    expect(daysBetween('2026-03-07', '2026-03-09')).toBe(2);
    expect(daysBetween('2026-12-30', '2027-01-02')).toBe(3);
    expect(daysBetween('2026-06-02', '2026-06-01')).toBe(-1);
    expect(addDays('2028-02-28', 1)).toBe('2028-02-29');
  });
});
