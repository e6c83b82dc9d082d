import { describe, expect, it } from 'vitest';
import { figures, figuresWithSpread } from '../../../../renderer/run/words/figures.ts';

describe('a computed number', () => {
  it.each([
    [0, '0'],
    [0.0005, '0.0005'],
    [2.741, '2.74'],
    [87.66, '87.7'],
    [1234.5, '1235'],
  ])('of %d is shown as %s', (value, text) => {
    expect(figures(value)).toBe(text);
  });

  it.each([
    [55.2, 7.62, '55.2 ± 7.6'],
    [87.66, 0.0596, '87.7 ± 0.1'],
    [2.741, 0.0661, '2.74 ± 0.07'],
    [28.12, 2.26, '28.1 ± 2.3'],
    [24.13, 12.4, '24 ± 12'],
    [0.0005, 0.0001, '0.0005 ± 0.0001'],
    [6967, 803, '6967 ± 803'],
    [0, 0.3, '0 ± 0.3'],
    [50, 0, '50 ± 0'],
  ])('of %d off by %d at most claims no more figures than it has: %s', (value, plusMinus, text) => {
    expect(figuresWithSpread(value, plusMinus)).toBe(text);
  });

  it('says of a spread finer than its number that there is one', () => {
    expect(figuresWithSpread(87.66, 0.004)).toBe('87.7 ± 0.004');
  });
});
