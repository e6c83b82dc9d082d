/** A declared failure in plain words, read out when it appears. */
import { type ErrorCode, type ErrorWith, errorWords } from './errorWords.ts';
import { Note } from './Note.tsx';

export function ErrorText<C extends ErrorCode>({ error }: { readonly error: ErrorWith<C> | null }) {
  if (error === null) return null;
  return (
    <Note tone="ember" isSpoken>
      {errorWords(error)}
    </Note>
  );
}
