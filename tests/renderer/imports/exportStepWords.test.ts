/** What an export is just writing: the table in plain words, and how many are written of how many. */
import { expect, it } from 'vitest';
import { exportStepPct, exportStepWords } from '../../../renderer/imports/exportStepWords.ts';

const STEP = {
  isDone: false,
  tablesDone: 30,
  tableCount: 70,
  rowsDone: 900,
  rowCount: 31_890,
  filesDone: 0,
  fileCount: 0,
} as const;

it('names the table without its signs', () => {
  expect(exportStepWords({ ...STEP, writing: 'run_answers' })).toBe('Writing run answers: 30 of 70 tables written.');
  expect(exportStepWords({ ...STEP, writing: 'customers-and-appliances' })).toBe(
    'Writing customers and appliances: 30 of 70 tables written.',
  );
});

it('counts photos once the tables are written, and fills the bar only with them', () => {
  const rows = { ...STEP, writing: 'visits', rowsDone: STEP.rowCount, fileCount: 50 };
  expect(exportStepWords({ ...rows, filesDone: 12 })).toBe('12 of 50 photos and documents put in.');
  expect(exportStepPct(rows)).toBeLessThan(100);
  expect(exportStepPct({ ...rows, filesDone: 50 })).toBe(100);
  expect(exportStepPct(null)).toBe(0);
});

it('says that it has begun before the first answer', () => {
  expect(exportStepWords(null)).toBe('Beginning …');
});
