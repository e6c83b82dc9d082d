/** Why something was not saved, in words a technician can act on. Every failure a write into a run declares is here. */

import type { z } from 'zod';
import type { TypedProblem } from '../../../domain/quantity/parseTyped.ts';
import type { ErrorsOf } from '../../../electron/contract/index.ts';
import type { licenceProblem } from '../../../electron/contract/visits.ts';
import { formatSeconds } from '../clock/formatSeconds.ts';
import type { WriteName } from '../state/RunContext.ts';
import { problemWords } from './problemWords.ts';

export type SaveError = ErrorsOf<WriteName>;

export function saveErrorWords(error: SaveError): string {
  switch (error.code) {
    case 'not-saved':
      return NOT_SAVED[error.data.why];
    case 'offline':
      return 'The program’s core does not answer. The text is kept here; try again.';
    case 'internal':
      return `Something went wrong inside the program (reference ${error.data.ref}).`;
    case 'not-signed-in':
      return 'Nobody is signed in. Sign in again; the text is kept here.';
    case 'not-allowed':
      return `Only ${error.data.needs.join(' or ')} may do this.`;
    case 'needs-licence':
      return licenceWords(error.data);
    case 'run-sealed':
      return 'The record is sealed. A correction is an amendment.';
    case 'step-not-open':
      return 'This step is not open.';
    case 'step-locked':
      return 'This step is locked: something comes first.';
    case 'cannot-read':
      return isTypedProblem(error.data.problem) ? problemWords(error.data.problem) : 'This is not a reading.';
    case 'must-be-possible':
      return 'This may not be left out.';
    case 'not-an-option':
      return `“${error.data.value}” is not one of the answers.`;
    case 'needs-new-reading':
      return 'Measure again: the number may not be changed by hand here.';
    case 'no-such-suggestion':
      return 'The readings have changed meanwhile; look at the question again.';
    case 'hold-running':
      return 'It is already running.';
    case 'hold-not-over':
      return `${formatSeconds(error.data.leftS)} still to wait.`;
    case 'hold-not-running':
      return 'It is not running.';
    case 'tuning-running':
      return 'The tuning run is already running.';
    case 'tuning-not-running':
      return 'No tuning run is running.';
    case 'stage-out-of-order':
      return 'Another stage comes first.';
    case 'stages-missing':
      return 'Not every stage has been reached.';
    case 'leaving-blocked':
      return `${error.data.blockers.length} open before leaving.`;
    case 'reason-missing':
      return 'A reason is needed.';
    case 'no-make-safe':
      return 'No make-safe is on record for this visit.';
    case 'not-finished':
      return 'The visit is not finished yet.';
    case 'make-safe-closed':
      return 'This make-safe is closed.';
    case 'not-begun':
      return 'The visit has not begun.';
    case 'not-found':
      return `Not on file any more (${error.data.entity}).`;
    case 'bad-input':
      return error.data.issues.map((issue) => issue.message).join('; ');
    default:
      return `Refused (${error.code}).`;
  }
}

export function licenceWords(problem: z.output<typeof licenceProblem>): string {
  return `${problem.name} ${LICENCE[problem.why]} (${problem.on}). Gas work needs a licence valid on the day.`;
}

const LICENCE = {
  'no-licence': 'has no licence on file',
  'not-valid-on-day': 'has no licence valid on this day',
  'other-fuel': 'has a licence for another fuel',
  'too-large': 'has a licence for smaller appliances only',
} as const;

const NOT_SAVED = {
  'disk-full': 'The disk is full. Free some space and press Enter again; the text is kept here.',
  'read-only': 'The data folder cannot be written to. The text is kept here.',
  locked: 'Another program holds the data. Press Enter again in a moment; the text is kept here.',
  failed: 'The store did not take it. Press Enter again; the text is kept here.',
} as const;

const PROBLEM_CODES = ['empty', 'not-a-number', 'unknown-unit', 'unit-of-another-kind', 'ambiguous', 'beyond-possible'];

function isTypedProblem(problem: object): problem is TypedProblem {
  return 'code' in problem && PROBLEM_CODES.some((code) => code === problem.code);
}
