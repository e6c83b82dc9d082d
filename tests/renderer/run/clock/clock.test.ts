import { describe, expect, it } from 'vitest';
import { formatSeconds, secondsInWords } from '../../../../renderer/run/clock/formatSeconds.ts';
import { secondsLeftOf } from '../../../../renderer/run/clock/secondsLeftOf.ts';
import { timeOfDay } from '../../../../renderer/run/clock/timeOfDay.ts';

describe('formatSeconds', () => {
  it.each([
    [0, '0:00'],
    [7, '0:07'],
    [247, '4:07'],
    [3729, '1:02:09'],
    [59.2, '1:00'],
    [-3, '0:00'],
  ])('shows %s s as %s', (seconds, text) => {
    expect(formatSeconds(seconds)).toBe(text);
  });
});

describe('secondsInWords', () => {
  it.each([
    [0, '0 s'],
    [30, '30 s'],
    [300, '5 min'],
    [4830, '1 h 20 min 30 s'],
  ])('says %s s as %s', (seconds, text) => {
    expect(secondsInWords(seconds)).toBe(text);
  });
});

describe('secondsLeftOf', () => {
  it('counts from the stored start, whatever happened in between', () => {
    expect(secondsLeftOf('2026-03-02T13:00:00.000Z', 600, '2026-03-02T13:04:00.000Z')).toBe(360);
    expect(secondsLeftOf('2026-03-02T13:00:00.000Z', 600, '2026-03-02T14:00:00.000Z')).toBe(-3000);
  });
});

describe('timeOfDay', () => {
  it('is the clock on the site’s wall, also at midnight and in summer time', () => {
    expect(timeOfDay('2026-03-02T13:05:09.000Z', 'America/Toronto')).toBe('08:05');
    expect(timeOfDay('2026-07-02T13:05:09.000Z', 'America/Toronto', true)).toBe('09:05:09');
    expect(timeOfDay('2026-03-02T05:00:00.000Z', 'America/Toronto')).toBe('00:00');
  });
});
