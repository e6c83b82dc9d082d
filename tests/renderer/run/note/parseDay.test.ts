import { describe, expect, it } from 'vitest';
import { dayInWords, parseDay } from '../../../../renderer/run/note/parseDay.ts';

describe('parseDay', () => {
  it.each([
    ['2026-07-04', '2026-07-04'],
    ['2026.7.4', '2026-07-04'],
    ['4 July 2026', '2026-07-04'],
    ['4 jul 2026', '2026-07-04'],
    ['4th Jul. 2026', '2026-07-04'],
    ['July 4, 2026', '2026-07-04'],
    ['31/12/2026', '2026-12-31'],
    ['12/31/2026', '2026-12-31'],
    ['29 Feb 2028', '2028-02-29'],
    ['07/07/2026', '2026-07-07'],
  ])('reads %s', (typed, on) => {
    expect(parseDay(typed)).toEqual({ kind: 'day', on });
  });

  it('asks when day and month can be swapped', () => {
    expect(parseDay('04/07/2026')).toEqual({ kind: 'ambiguous', meanings: ['2026-07-04', '2026-04-07'] });
  });

  it.each(['', 'soon', '31 Feb 2026', '29 Feb 2026', '32/13/2026', '4 July', '4/7/26', '4 Mars 2026x'])(
    'refuses %s',
    (typed) => {
      expect(parseDay(typed)).toEqual({ kind: 'not-a-day' });
    },
  );
});

describe('dayInWords', () => {
  it('writes the month as a word', () => {
    expect(dayInWords('2026-07-04')).toBe('4 July 2026');
  });
});
