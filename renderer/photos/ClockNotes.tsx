/** What speaks against the times of the pictures, said once for each kind of doubt and before they are put in place. */
import { Note } from '../kit/Note.tsx';
import { clockDoubts } from './clockDoubts.ts';
import type { PhotoTime } from './clockWords.ts';

export function ClockNotes({ rows }: { readonly rows: readonly PhotoTime[] }) {
  return clockDoubts(rows).map(({ title, words }) => (
    <Note key={title} tone="caution" title={title} isSpoken>
      {words}
    </Note>
  ));
}
