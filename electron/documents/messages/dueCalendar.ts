/** Due days as whole-day entries of a calendar file (RFC 5545); each keeps its identity when the file is made again. */
import ical from 'ical-generator';

export type DueEntry = {
  readonly key: string;
  readonly on: string;
  readonly summary: string;
  readonly location: string;
  readonly description: string;
};

export function dueCalendar(name: string, entries: readonly DueEntry[], madeAt: string): string {
  const calendar = ical({ name, prodId: { company: 'Lightoff', product: 'due', language: 'EN' } });
  for (const { key, on, summary, location, description } of entries) {
    calendar.createEvent({
      id: `${key.replaceAll(' ', '.')}@due.lightoff`,
      stamp: new Date(madeAt),
      start: new Date(`${on}T00:00:00Z`),
      end: new Date(Date.parse(`${on}T00:00:00Z`) + DAY_MS),
      allDay: true,
      timezone: 'UTC',
      summary,
      location,
      description,
    });
  }
  return calendar.toString();
}

/** The end of a whole-day entry is the first day after it (RFC 5545, 3.6.1). */
const DAY_MS = 86_400_000;
