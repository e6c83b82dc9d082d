/** The month in which a service goes into a round: any day of that month must do, so none is past the appliance's latest day. */
import { lastDayOfMonth, monthBefore } from '../coverage/period.ts';

/** The month of the due day if all of it lies before the latest day, else the month before. */
export function roundMonth(due: { readonly dueOn: string; readonly latestOn: string }): string {
  const month = due.dueOn.slice(0, 7);
  return lastDayOfMonth(month) <= due.latestOn ? month : monthBefore(month);
}

/** A round whose month has begun or is over is ridden now: this month, by the latest day. */
export function ridableMonth(month: string, today: string): string {
  const now = today.slice(0, 7);
  return month < now ? now : month;
}

/** Neighbours by postcode: its first part where it has two (K1A 0B1, SW1A 1AA), else its first three figures (75011, 94110). */
export function areaOf(postcode: string | null): string | null {
  const [first = '', second] = (postcode ?? '')
    .trim()
    .toUpperCase()
    .split(/[\s-]+/);
  if (first === '') return null;
  return second === undefined || /^\d{5}$/.test(first) ? first.slice(0, 3) : first;
}
