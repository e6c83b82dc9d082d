/** Weeks of the diary, Monday to Sunday, as plain calendar days. */
import { Temporal } from 'temporal-polyfill';

export function mondayOf(day: string): string {
  const date = Temporal.PlainDate.from(day);
  return date.subtract({ days: date.dayOfWeek - 1 }).toString();
}

export function addDays(day: string, days: number): string {
  return Temporal.PlainDate.from(day).add({ days }).toString();
}

export function weekOf(day: string): readonly string[] {
  const monday = mondayOf(day);
  return Array.from({ length: 7 }, (_, index) => addDays(monday, index));
}

/** From `day` to `other`: negative when it is earlier. */
export function daysBetween(day: string, other: string): number {
  return Temporal.PlainDate.from(day).until(Temporal.PlainDate.from(other)).days;
}

export function isDay(text: string): boolean {
  try {
    return Temporal.PlainDate.from(text).toString() === text;
  } catch {
    return false;
  }
}
