import { describe, expect, it } from 'vitest';
import { analyserClockOffset, setRight } from '../../../domain/intake/clockOffset.ts';

const HALIFAX = { timeZone: 'America/Halifax' };
/** 10:00 in Halifax (UTC−4 in winter). */
const NOW = '2026-03-02T14:00:20Z';
const offset = (shown: string, now = NOW) => analyserClockOffset({ shown, now, ...HALIFAX });

describe('an instrument whose clock is looked at beside the laptop', () => {
  it('agrees while it shows the same within what looking takes', () => {
    expect(offset('10:00')).toBeNull();
    expect(offset('10:04')).toBeNull();
  });

  it('left on summer time is a whole hour ahead; one that runs wrong is some other time away', () => {
    expect(offset('11:00')).toMatchObject({ clock: 'analyser', isTimeZone: true });
    expect(offset('09:47')).toMatchObject({ isTimeZone: false });
    expect(Math.round((offset('09:47')?.offsetS ?? 0) / 60)).toBe(-13);
  });

  it('is taken for the nearest such time, over midnight as well', () => {
    const beforeMidnight = '2026-03-03T03:55:00Z';
    expect(Math.round((offset('00:25', beforeMidnight)?.offsetS ?? 0) / 60)).toBe(30);
    expect(Math.round((offset('23:25', '2026-03-03T04:05:00Z')?.offsetS ?? 0) / 60)).toBe(-40);
  });

  it('has what it wrote down set right by that', () => {
    const problem = offset('11:00');
    expect(problem).not.toBeNull();
    expect(setRight('2026-03-02T14:30:00Z', problem ?? { offsetS: 0 })).toBe('2026-03-02T13:30:20Z');
  });
});
