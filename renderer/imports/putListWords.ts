/** Why a list that somebody chose could not be handed to the core. */
import type { PutFileReply } from '../../electron/contract/wire.ts';
import { tableProblemWords } from '../kit/errorWords.ts';

type PutProblem = Extract<PutFileReply, { readonly ok: false }>['code'];

export const LARGEST_LIST_BYTES = 32 * 1024 * 1024;

export function putListWords(code: PutProblem): string {
  return WORDS[code];
}

const WORDS: Readonly<Record<PutProblem, string>> = {
  'not-signed-in': 'Nobody is signed in.',
  'too-large': `Nothing was taken in: ${tableProblemWords('too-large', null)}`,
  'type-refused': 'Only CSV files (.csv, .tsv, .txt) and workbooks (.xlsx) are taken in.',
  'not-saved': 'The disk did not take the file. Nothing was stored.',
  internal: 'Something went wrong in the program itself.',
  offline: 'The program’s core does not answer.',
};
