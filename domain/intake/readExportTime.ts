/** The moment a row was read, from the file's own cells: a day and a time, a time alone, or an ISO instant. Never guessed. */
import { Temporal } from 'temporal-polyfill';
import { readDayText } from '../judgement/mistakes/readDayText.ts';
import { err, ok, type Result } from '../result.ts';
import type { ExportMapping } from './exportMapping.ts';

export type ExportTimeProblem =
  | { readonly code: 'not-a-time'; readonly text: string }
  /** Day first or month first: both are days. */
  | { readonly code: 'day-order-unknown'; readonly text: string };

export function readExportTime(
  text: string,
  where: {
    readonly timeZone: string;
    /** The day of a time that stands alone. */
    readonly day: string;
    readonly dayOrder: ExportMapping['dayOrder'];
  },
): Result<string, ExportTimeProblem> {
  const plain = text.trim().replaceAll(/\s+/gu, ' ');
  const withOffset = /^\d{4}-\d\d-\d\d[T ]\d\d:\d\d(:\d\d(\.\d+)?)?(Z|[+-]\d\d:?\d\d)$/u.test(plain);
  if (withOffset) return instantOf(() => Temporal.Instant.from(plain.replace(' ', 'T')), text);
  const time = /(?:^|[T ])(\d{1,2}):([0-5]\d)(?::([0-5]\d)(?:[.,]\d+)?)?(?: ?([AaPp])\.?[Mm]\.?)?$/u.exec(plain);
  if (time === null) return err({ code: 'not-a-time', text });
  const day = dayOf(plain.slice(0, time.index).trim(), where);
  if (!day.ok) return day;
  const hour = hourOf(Number(time[1]), time[4]);
  if (hour === null) return err({ code: 'not-a-time', text });
  return instantOf(
    () =>
      Temporal.PlainDate.from(day.value)
        .toZonedDateTime({
          timeZone: where.timeZone,
          plainTime: new Temporal.PlainTime(hour, Number(time[2]), Number(time[3] ?? 0)),
        })
        .toInstant(),
    text,
  );
}

function dayOf(
  text: string,
  { day, dayOrder }: { readonly day: string; readonly dayOrder: ExportMapping['dayOrder'] },
): Result<string, ExportTimeProblem> {
  if (text === '') return ok(day);
  // Instruments write the year with two digits; none of them is from the last century.
  const full = text.replace(/^(\d{1,2})([./-])(\d{1,2})\2(\d\d)$/u, '$1$2$3$220$4');
  const read = readDayText(full);
  if (read.ok) return read;
  if (read.error.code !== 'day-month-ambiguous') return err({ code: 'not-a-time', text });
  if (dayOrder === null) return err({ code: 'day-order-unknown', text });
  return ok(read.error.readings[dayOrder === 'day-first' ? 0 : 1]);
}

function hourOf(hour: number, half: string | undefined): number | null {
  if (half === undefined) return hour <= 23 ? hour : null;
  if (hour < 1 || hour > 12) return null;
  return (hour % 12) + (half.toLowerCase() === 'p' ? 12 : 0);
}

function instantOf(make: () => Temporal.Instant, text: string): Result<string, ExportTimeProblem> {
  try {
    return ok(new Date(make().epochMilliseconds).toISOString());
  } catch (error) {
    if (error instanceof RangeError) return err({ code: 'not-a-time', text });
    throw error;
  }
}
