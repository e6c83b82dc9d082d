/**
 * Minutes of a local day and instants, both ways. Minutes are elapsed ones: on the day the clock goes forward the day has
 * 1380, and 09:00 on the wall is minute 480; on the day it goes back it has 1500, and 09:00 is minute 600.
 */
import { Temporal } from 'temporal-polyfill';

function midnight(date: string, timeZone: string): Temporal.ZonedDateTime {
  return Temporal.PlainDate.from(date).toZonedDateTime(timeZone);
}

export function minutesOfDay(date: string, timeZone: string): number {
  return Math.round(midnight(date, timeZone).hoursInDay * 60);
}

/** A wall time that the clock skips moves on by what is skipped; one that comes twice is the first. */
export function minuteOfWallTime(date: string, wallTime: string, timeZone: string): number {
  const start = midnight(date, timeZone);
  const at = Temporal.PlainDate.from(date).toPlainDateTime(Temporal.PlainTime.from(wallTime)).toZonedDateTime(timeZone);
  return Math.round((at.epochMilliseconds - start.epochMilliseconds) / 60_000);
}

/** `HH:MM` as the clock on the wall shows it. */
export function wallTimeOfMinute(date: string, minute: number, timeZone: string): string {
  return midnight(date, timeZone).add({ minutes: minute }).toPlainTime().toString({ smallestUnit: 'minute' });
}

/** By the number of the day, since the planner asks it of every visit and day. ISO days without a time are UTC midnights. */
export function daysBetween(from: string, to: string): number {
  return Math.round((Date.parse(to) - Date.parse(from)) / 86_400_000);
}

export function addDays(date: string, days: number): string {
  return Temporal.PlainDate.from(date).add({ days }).toString();
}
