/** Why something was not saved, after the words “not saved”. A text that is no reading says what to type instead. */
import type { TypedProblem } from '../../../domain/quantity/parseTyped.ts';
import type { ErrorsOf } from '../../../electron/contract/index.ts';
import { type ErrorCode, type ErrorWith, errorWords } from '../../kit/errorWords.ts';
import type { WriteName } from '../state/RunContext.ts';
import { problemWords } from './problemWords.ts';

export type SaveError = ErrorsOf<WriteName>;

export function saveErrorWords(error: SaveError): string {
  if (error.code === 'cannot-read' && isTypedProblem(error.data.problem)) return problemWords(error.data.problem);
  return errorWords(error as ErrorWith<ErrorCode>).replace(/^Not saved: /, '');
}

const PROBLEM_CODES = ['empty', 'not-a-number', 'unknown-unit', 'unit-of-another-kind', 'ambiguous', 'beyond-possible'];

function isTypedProblem(problem: object): problem is TypedProblem {
  return 'code' in problem && PROBLEM_CODES.some((code) => code === problem.code);
}
