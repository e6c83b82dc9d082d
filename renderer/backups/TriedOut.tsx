/** The last time a backup was gone back to by way of trial, and what came of it. */
import { formatNumber } from '../../domain/quantity/formatQuantity.ts';
import { COPY_PROBLEM_WORDS } from '../../domain/text/copyProblemWords.ts';
import type { Rehearsal } from '../../electron/contract/backups.ts';
import { InstantText } from '../kit/DateText.tsx';

const PROBLEM_WORDS: Readonly<Record<NonNullable<Rehearsal['problem']>, string>> = {
  ...COPY_PROBLEM_WORDS,
  'cannot-open': 'the program cannot open it',
  'rows-missing': 'records are missing after going back',
};

export function TriedOut({ at, copyName, problem, rowCount }: Rehearsal) {
  return (
    <p style={{ margin: 0 }}>
      Once a week a backup is tried out beside the store. <InstantText at={at} />:{' '}
      {problem === null ? (
        <span className="lo-verdict" data-tone="good">
          could be gone back to, {formatNumber(rowCount, 0)} records found again
        </span>
      ) : (
        <span className="lo-verdict" data-tone="bad">
          {copyName} cannot be gone back to: {PROBLEM_WORDS[problem]}. Make a new one now; it is tried out within the
          hour.
        </span>
      )}
    </p>
  );
}
