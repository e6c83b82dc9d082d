/** What an export is just writing: the table in plain words, and how many are written of how many. */
import { expect, it } from 'vitest';
import { exportStepWords } from '../../../renderer/imports/exportStepWords.ts';

const STEP = { isDone: false, tablesDone: 30, tableCount: 70, rowsDone: 900, rowCount: 31_890 } as const;

it('names the table without its signs', () => {
  expect(exportStepWords({ ...STEP, writing: 'run_answers' })).toBe('Writing run answers: 30 of 70 tables written.');
  expect(exportStepWords({ ...STEP, writing: 'customers-and-appliances' })).toBe(
    'Writing customers and appliances: 30 of 70 tables written.',
  );
});

it('says that it has begun before the first answer', () => {
  expect(exportStepWords(null)).toBe('Beginning …');
});
