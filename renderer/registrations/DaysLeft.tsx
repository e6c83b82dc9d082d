/** How many days are left, in words, with the tone growing as they go. */
import type { Deadline } from '../../electron/contract/registrations.ts';
import { daysLeftWords, urgencyOf } from './deadlineWords.ts';

const TONES = { late: 'stop', pressing: 'bad', soon: 'doubt', calm: 'plain' } as const;

export function DaysLeft({ deadline }: { readonly deadline: Deadline | null }) {
  if (deadline === null) return <span className="lo-faint">no date known yet</span>;
  return (
    <span className="lo-verdict" data-tone={TONES[urgencyOf(deadline.daysLeft)]}>
      {daysLeftWords(deadline.daysLeft)}
    </span>
  );
}
