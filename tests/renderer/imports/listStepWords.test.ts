import { expect, it } from 'vitest';
import { listStepPct, listStepWords } from '../../../renderer/imports/listStepWords.ts';

it('says how far a list is, going in and going out', () => {
  expect(listStepWords('take-in', null)).toBe('Beginning …');
  expect(listStepWords('take-in', { doing: 'rows', done: 120, of: 80_000 })).toBe('120 of 80000 entries written.');
  expect(listStepWords('take-out', { doing: 'rows', done: 5, of: 9 })).toBe('5 of 9 records taken out.');
  expect(listStepWords('take-out', { doing: 'looking', done: 1, of: 40 })).toContain('later work');
});

it('moves the bar only forward, from nothing to full', () => {
  const parts = (['looking', 'rows', 'finds', 'dues'] as const).flatMap((doing) =>
    [0, 1, 2].map((done) => listStepPct({ doing, done, of: 2 })),
  );
  expect(parts.toSorted((a, b) => a - b)).toEqual(parts);
  expect([listStepPct(null), parts.at(-1)]).toEqual([0, 100]);
  // An empty part is no division by nothing.
  expect(listStepPct({ doing: 'rows', done: 0, of: 0 })).toBe(10);
});
