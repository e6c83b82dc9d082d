/** What speaks against the times of the pictures, said once for each kind of doubt and before they are put in place. */
import { Note } from '../kit/Note.tsx';
import { awayWords, lengthWords } from './awayWords.ts';
import type { PhotoTime } from './clockWords.ts';

export function ClockNotes({ rows }: { readonly rows: readonly PhotoTime[] }) {
  const outside = rows.filter(({ when }) => when === 'outside');
  const idle = rows.filter(({ when }) => when === 'idle');
  const doubted = rows.filter(({ when }) => when === 'doubted');
  const [first] = doubted;
  return (
    <>
      {outside.length === 0 ? null : (
        <Note tone="caution" title="The camera’s clock does not fit this visit" isSpoken>
          By its own clock {outside.length === 1 ? 'one picture was' : `${outside.length} pictures were`} taken{' '}
          {awayWords(outside[0]?.awayS ?? 0)}. {BY_ORDER}
        </Note>
      )}
      {idle.length === 0 ? null : (
        <Note tone="caution" title="Taken when nobody was at work on this run" isSpoken>
          {idle.length === 1 ? 'One picture lies' : `${idle.length} pictures lie`} hours away from anything that was
          recorded. {BY_ORDER}
        </Note>
      )}
      {first === undefined ? null : (
        <Note tone="caution" title="The camera may be set to another time zone" isSpoken>
          {count(doubted.length)} no time zone in it, and the time it shows may be {lengthWords(first.doubtS)}{' '}
          {first.doubtS > 0 ? 'behind' : 'ahead of'} the site’s clock. {BY_ORDER}
        </Note>
      )}
    </>
  );
}

const BY_ORDER = 'They are matched by their order only: look at each before it is put in place.';

function count(pictures: number): string {
  return pictures === 1 ? 'One picture has' : `${pictures} pictures have`;
}
