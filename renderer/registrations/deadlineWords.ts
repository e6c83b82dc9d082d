/** How a registration's last day came about, as a sentence: the day, its window, and what it is counted from. */
import type { Deadline } from '../../electron/contract/registrations.ts';
import { COVER_DATE_WORDS } from '../kit/coverDates.ts';
import { dayWords } from '../kit/dayWords.ts';
import { daysBetween } from '../visits/week.ts';

/** `8 days left`, `today is the last day`, `3 days late` */
export function daysLeftWords(daysLeft: number): string {
  if (daysLeft === 0) return 'today is the last day';
  if (daysLeft > 0) return daysLeft === 1 ? '1 day left' : `${daysLeft} days left`;
  return daysLeft === -1 ? '1 day late' : `${-daysLeft} days late`;
}

export function deadlineWords({ dueOn, countedFrom, countedFromOn, window, isAssumed }: Deadline): string {
  const length = 'days' in window ? counted(window.days, 'day') : counted(window.months, 'month');
  const sentence = `Last day ${dayWords(dueOn, { weekday: true })}: ${length} from “${COVER_DATE_WORDS[countedFrom]}” on ${dayWords(countedFromOn)}.`;
  return isAssumed
    ? `${sentence} Assumed: the sheet names no date that is known, so the earliest known one was taken.`
    : sentence;
}

/** `55 days before its last day`, `2 days after its last day` */
export function submittedInTimeWords(submittedOn: string, dueOn: string): string {
  const ahead = daysBetween(submittedOn, dueOn);
  if (ahead === 0) return 'on its last day';
  return ahead > 0 ? `${counted(ahead, 'day')} before its last day` : `${counted(-ahead, 'day')} after its last day`;
}

/** Half the window, 14, 7, 3 and 1 days: from where on it presses. */
export function urgencyOf(daysLeft: number): 'late' | 'pressing' | 'soon' | 'calm' {
  if (daysLeft < 0) return 'late';
  if (daysLeft <= 3) return 'pressing';
  return daysLeft <= 14 ? 'soon' : 'calm';
}

function counted(count: number, what: string): string {
  return count === 1 ? `1 ${what}` : `${count} ${what}s`;
}
