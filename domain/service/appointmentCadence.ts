/** When a booked visit is brought back to mind: three days before, the day before, and on the day (common practice, no source). */
import { addDays } from '../coverage/period.ts';

const DAYS_BEFORE = [3, 1, 0] as const;

/** The day the reminder that stands today was due on; null: none stands. */
export function appointmentReminderOn(plannedOn: string, today: string): string | null {
  if (today > plannedOn) return null;
  return DAYS_BEFORE.map((days) => addDays(plannedOn, -days)).findLast((sendOn) => sendOn <= today) ?? null;
}
