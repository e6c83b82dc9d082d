import { describe, expect, it } from 'vitest';
import { rangeText, readRange } from '../../../renderer/recalls/recallForm.ts';

describe('a range of serials as it is typed', () => {
  it.each([
    ['A100 to A200', { from: 'A100', to: 'A200' }],
    ['A-100 – A-200', { from: 'A-100', to: 'A-200' }],
    ['A-100–A-200', { from: 'A-100', to: 'A-200' }],
    ['A100...A200', { from: 'A100', to: 'A200' }],
    ['A-100 - A-200', { from: 'A-100', to: 'A-200' }],
    ['AB-5100 233', { from: 'AB-5100 233', to: 'AB-5100 233' }],
  ])('%s', (typed, range) => {
    expect(readRange(typed)).toEqual(range);
    expect(readRange(rangeText(range))).toEqual(range);
  });
});
