/** When to remind somebody of a service: 60, 30, 14 and 3 days before, then weekly until the latest day (common practice, no source). */
import { addDays } from '../coverage/period.ts';

export const DAYS_BEFORE = [60, 30, 14, 3] as const;

export type ReminderStage = `before-${(typeof DAYS_BEFORE)[number]}` | `week-${number}`;
export type Reminder = { readonly stage: ReminderStage; readonly sendOn: string };

/** Every reminder of one service, in order. `week-1` is a week after the one 3 days before. */
export function reminderPlan(due: { readonly dueOn: string; readonly latestOn: string }): readonly Reminder[] {
  const before = DAYS_BEFORE.map((days): Reminder => ({ stage: `before-${days}`, sendOn: addDays(due.dueOn, -days) }));
  const weekly: Reminder[] = [];
  for (let week = 1; ; week += 1) {
    const sendOn = addDays(due.dueOn, 7 * week - 3);
    if (sendOn > due.latestOn) break;
    weekly.push({ stage: `week-${week}`, sendOn });
  }
  return [...before, ...weekly];
}

/** The reminder that stands on that day, and the one after it. None before the first, none once the latest day is over. */
export function reminderOn(
  due: { readonly dueOn: string; readonly latestOn: string },
  today: string,
): { readonly now: Reminder | null; readonly next: Reminder | null } {
  const plan = reminderPlan(due);
  if (today > due.latestOn) return { now: null, next: null };
  return {
    now: plan.findLast(({ sendOn }) => sendOn <= today) ?? null,
    next: plan.find(({ sendOn }) => sendOn > today) ?? null,
  };
}
