/** Everything that is still wrong with a draft, each line a way to the field it is about. */
import type { DraftProblem } from './checkDraft.ts';
import { parentOf } from './fieldPlace.ts';
import { fieldWords } from './fieldWords.ts';
import { sectionOfPath } from './sections.ts';

/** More than these are shown once those are put right: most of a long list is one cause. */
const MOST = 12;

export function ProblemList({
  problems,
  onGo,
}: {
  readonly problems: readonly DraftProblem[];
  readonly onGo: (path: string) => void;
}) {
  if (problems.length === 0) return <p>Nothing is wrong with it.</p>;
  return (
    <>
      <ul className="sheet-problems">
        {problems.slice(0, MOST).map(({ path, words }) => (
          <li key={`${path} ${words}`}>
            <button type="button" className="sheet-entry-open" onClick={() => onGo(path)}>
              {placeWords(path)}: {words}
            </button>
          </li>
        ))}
      </ul>
      {problems.length > MOST ? <p className="lo-faint">and {problems.length - MOST} more</p> : null}
    </>
  );
}

/** `Startup, step by step: 3, 2: What is asked` */
function placeWords(path: string): string {
  const parts = path.split('.');
  const numbers = parts.filter((part) => /^\d+$/.test(part)).map((part) => String(Number(part) + 1));
  const name = parts.findLast((part) => !/^\d+$/.test(part)) ?? '';
  const keys = parts.map((part) => (/^\d+$/.test(part) ? Number(part) : part));
  const label = fieldWords(name, parentOf(keys)).label;
  return [sectionOfPath(path)?.title ?? '', numbers.join('.'), label].filter((part) => part !== '').join(', ');
}
