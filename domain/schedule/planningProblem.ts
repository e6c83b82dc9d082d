/**
 * What the planner is given: plain data, whole minutes, ISO days, no handle to anything.
 *
 * Times of a day are minutes from local midnight of the shop's time zone (`dayMinutes.ts` converts at the edge: a
 * summer-time day has 1380 or 1500 of them). Both ends of a time window are included; a break or a piece of work takes
 * its first minute and not its last, so one may begin as the other ends.
 */
import type { Coordinates } from './travel.ts';

/** Without coordinates when it is not on the map: ways to it are then an assumption. */
export type Place = { readonly placeId: string; readonly at: Coordinates | null };

/** Whole minutes from place to place, in the order of the problem's places; one direction may take longer than the other. */
export type TravelMatrix = { readonly minutes: readonly (readonly number[])[] };

/** Anything a visit can ask of a person: a licence class for a fuel, a training on a model line, an analyser in date. */
export type Skill = {
  readonly code: string;
  /** First and last day it holds; null: no end on that side. */
  readonly validFrom: string | null;
  readonly validTo: string | null;
};

export type TimeSpan = { readonly fromMin: number; readonly toMin: number };

/**
 * Time somebody is bound to spend at a place, rule or no rule: a visit booked where it breaks one, or one they go along to
 * without leading it. No visit of the plan lies over it, and there must be time for the way there from the visit before and
 * for the way on to the one after.
 *
 * Those of a day are taken as they begin: one is left when it and all before it are over. A way there is over when it
 * begins, or with the hours if they end before. Ways between stays alone, and between them and home, are never judged: no
 * plan can mend those.
 */
export type Stay = TimeSpan & { readonly visitId: string; readonly placeId: string };

export type WorkDay = {
  readonly date: string;
  readonly startMin: number;
  /** Latest minute to be home again. */
  readonly endMin: number;
  /** End of ordinary hours; what is worked after it counts as overtime. */
  readonly ordinaryEndMin: number;
  readonly breaks: readonly TimeSpan[];
  readonly stays: readonly Stay[];
  readonly isAbsent: boolean;
};

export type Technician = {
  readonly technicianId: string;
  readonly homePlaceId: string;
  readonly skills: readonly Skill[];
  readonly days: readonly WorkDay[];
};

/** A visit may START between the two minutes. */
export type VisitWindow = TimeSpan & { readonly date: string };

export const DEADLINE_KINDS = ['warranty', 'service', 'none'] as const;
export type DeadlineKind = (typeof DEADLINE_KINDS)[number];

/** Begun, finished or signed visits never move. */
export const VISIT_STATES = ['open', 'begun', 'finished', 'signed'] as const;
export type PlanVisitState = (typeof VISIT_STATES)[number];

/** Each field is kept by itself: a visit may be bound to a person and free in its day. */
export type Pin = {
  readonly technicianId: string | null;
  readonly date: string | null;
  readonly startMin: number | null;
};

export type PlanVisit = {
  readonly visitId: string;
  readonly placeId: string;
  /** At least one minute. */
  readonly durationMin: number;
  /** Long work that is begun before a short break and goes on after it (`LONGEST_PAUSE_MIN`). */
  readonly mayPause: boolean;
  readonly needs: readonly string[];
  /** What whoever goes had better have as well, by the same codes. */
  readonly wishes: readonly string[];
  /** null: any time the technician works. */
  readonly windows: readonly VisitWindow[] | null;
  readonly dueFrom: string | null;
  readonly dueTo: string | null;
  readonly deadline: string | null;
  readonly deadlineKind: DeadlineKind;
  /** 3 presses most. */
  readonly priority: 0 | 1 | 2 | 3;
  readonly pin: Pin;
  /** What the customer has been told. */
  readonly promised: VisitWindow | null;
  /** A visit that must be over before this one starts. */
  readonly afterVisitId: string | null;
  readonly state: PlanVisitState;
};

export type PlanningProblem = {
  readonly places: readonly Place[];
  readonly travel: TravelMatrix;
  readonly technicians: readonly Technician[];
  readonly visits: readonly PlanVisit[];
  readonly firstDate: string;
  readonly lastDate: string;
  /**
   * Starts are wished on whole multiples of this many minutes; 1: to the minute. A wish, no rule: where windows, hours and
   * neighbours leave a visit no such start, it has another. What is pinned or recorded starts when it does.
   */
  readonly grainMin: number;
  /** A deadline met with fewer days to spare counts as close. */
  readonly safetyMarginDays: number;
};

/** A closed span longer than this is no break that work could be left for. */
export const LONGEST_PAUSE_MIN = 60;

export const NO_PIN: Pin = { technicianId: null, date: null, startMin: null };

export function isFixed(visit: Pick<PlanVisit, 'state'>): boolean {
  return visit.state !== 'open';
}
