import { describe, expect, it } from 'vitest';
import { typedWithUnit } from '../../../domain/quantity/typedWithUnit.ts';

describe('typedWithUnit', () => {
  it.each([
    ['-3', '°F', '-3 °F'],
    ['-3 F', '°F', '-3 F'],
    ['>4000', 'ppm', '>4000 ppm'],
    [' 41,5 ', 'ppm', '41,5 ppm'],
    ['11 in w.c.', 'in w.c.', '11 in w.c.'],
    ['9.2 %', '%', '9.2 %'],
    ['7.4', '', '7.4'],
    ['12', null, '12'],
  ])('%j in a box for %j reads %j', (text, unit, words) => {
    expect(typedWithUnit(text, unit)).toBe(words);
  });
});
