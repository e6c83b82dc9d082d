/** How loudly a registration's last day calls: at half the window, 14, 7, 3 and 1 days before, then late (common practice, no source). */
import { daysFromTo } from './period.ts';

export const DEADLINE_ALARMS = ['none', 'half', 'days-14', 'days-7', 'days-3', 'days-1', 'late'] as const;
export type DeadlineAlarm = (typeof DEADLINE_ALARMS)[number];

/** The loudest one that has been reached; the last day itself still counts as one day before. */
export function deadlineAlarm(input: {
  readonly countedFromOn: string;
  readonly dueOn: string;
  readonly today: string;
}): DeadlineAlarm {
  const daysLeft = daysFromTo(input.today, input.dueOn);
  if (daysLeft < 0) return 'late';
  if (daysLeft <= 1) return 'days-1';
  if (daysLeft <= 3) return 'days-3';
  if (daysLeft <= 7) return 'days-7';
  if (daysLeft <= 14) return 'days-14';
  return daysLeft * 2 <= daysFromTo(input.countedFromOn, input.dueOn) ? 'half' : 'none';
}
