/**
 * One person's visits as a calendar file (RFC 5545): times in UTC, an identity that stays, and a sequence that grows with each
 * change, so that a calendar which reads the file again moves the entry instead of adding one. Cancelled visits say so.
 */
import ical, { ICalEventStatus } from 'ical-generator';
import { Temporal } from 'temporal-polyfill';

export type CalendarVisit = {
  readonly visitId: string;
  readonly revision: number;
  readonly on: string;
  /** null: some time that day: the entry takes the day. */
  readonly startMin: number | null;
  readonly durationMin: number;
  readonly timeZone: string;
  readonly summary: string;
  readonly location: string;
  readonly description: string;
  readonly isPencilled: boolean;
  readonly isCancelled: boolean;
};

export function visitCalendar(name: string, visits: readonly CalendarVisit[], madeAt: string): string {
  const calendar = ical({ name, prodId: { company: 'Lightoff', product: 'visits', language: 'EN' } });
  for (const visit of visits) {
    const start = startOf(visit);
    calendar.createEvent({
      id: `${visit.visitId}@visits.lightoff`,
      sequence: visit.revision,
      stamp: new Date(madeAt),
      start: new Date(start.epochMilliseconds),
      end: new Date(start.add({ minutes: visit.durationMin }).epochMilliseconds),
      summary: visit.summary,
      location: visit.location,
      description: visit.description,
      status: visit.isCancelled
        ? ICalEventStatus.CANCELLED
        : visit.isPencilled
          ? ICalEventStatus.TENTATIVE
          : ICalEventStatus.CONFIRMED,
    });
  }
  return calendar.toString();
}

/** Without a time of its own a visit is put at the beginning of a usual day. */
const USUAL_START_MIN = 480;

function startOf({ on, startMin, timeZone }: CalendarVisit): Temporal.Instant {
  const minute = startMin ?? USUAL_START_MIN;
  const wall = Temporal.PlainDate.from(on).toPlainDateTime({ hour: Math.floor(minute / 60), minute: minute % 60 });
  // An hour that the clock skips in spring is the one after it.
  return wall.toZonedDateTime(timeZone, { disambiguation: 'compatible' }).toInstant();
}
