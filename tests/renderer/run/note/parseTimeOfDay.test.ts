import { describe, expect, it } from 'vitest';
import { parseTimeOfDay } from '../../../../renderer/run/note/parseTimeOfDay.ts';

describe('parseTimeOfDay', () => {
  it.each([
    ['14:32', '14:32'],
    ['14.32', '14:32'],
    ['1432', '14:32'],
    ['932', '09:32'],
    ['9h05', '09:05'],
    ['2:32 pm', '14:32'],
    ['12:05 am', '00:05'],
    ['12:05 p.m.', '12:05'],
    [' 7:00 ', '07:00'],
    ['0:00', '00:00'],
  ])('reads %s', (typed, time) => {
    expect(parseTimeOfDay(typed)).toBe(time);
  });

  it.each(['', '24:00', '14:60', '13:05 pm', '14', 'noon', '14:3', '99999'])('refuses %s', (typed) => {
    expect(parseTimeOfDay(typed)).toBeNull();
  });
});
