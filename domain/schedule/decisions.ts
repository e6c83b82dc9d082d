/** What needs a decision now, from the days ahead: a fact each, what presses most first. */
import { type AgedAnswer, CALL_DAYS } from '../procedure/agedReadiness.ts';
import { type Conflict, isGrave } from './dayConflicts.ts';
import { addDays, daysBetween } from './dayMinutes.ts';
import { type HeldInstrument, hasInDate } from './heldInstruments.ts';
import { isOfPapers } from './ofPapers.ts';
import { findShortages, type Outing, type Shortage } from './sharedInstruments.ts';

export type VisitAhead = {
  readonly visitId: string;
  readonly plannedOn: string;
  readonly state: string;
  readonly promisedOn: string | null;
  readonly jobs: readonly { readonly agedReadiness: readonly AgedAnswer[] }[];
};
export type JobWaiting = { readonly priority: number; readonly latestOn: string | null };
export type PersonAtWork = {
  readonly staffId: string;
  readonly roles: readonly string[];
  readonly licences: readonly { readonly validTo: string }[];
  readonly instruments: readonly HeldInstrument[];
};

export type DaysAhead<V, J, P, E> = {
  readonly today: string;
  /** Each of everybody's visits, with what does not fit for whoever is on it. */
  readonly visits: readonly {
    readonly visit: V;
    readonly isMovable: boolean;
    readonly conflicts: readonly Conflict[];
  }[];
  readonly waiting: readonly J[];
  readonly people: readonly {
    readonly person: P;
    /** Where their licences name other places than their visits are at; null: nothing to ask. */
    readonly elsewhere: E | null;
  }[];
  /** Who goes out to measure; whoever does not plan is told of their own visits and papers only. */
  readonly outings: readonly Outing[];
  readonly plans: boolean;
};

export type DecisionToMake<V, J, P, E> =
  | {
      readonly kind: 'does-not-fit';
      readonly visit: V;
      readonly isGrave: boolean;
      readonly conflicts: readonly Conflict[];
    }
  /** Given so long ago that it has to be asked again before going. */
  | { readonly kind: 'readiness-old'; readonly visit: V; readonly answers: readonly AgedAnswer[] }
  | { readonly kind: 'still-pencilled'; readonly visit: V }
  | { readonly kind: 'nobody-told'; readonly visit: V }
  | { readonly kind: 'waiting-job'; readonly job: J; readonly daysLeft: number | null }
  | { readonly kind: 'licence-ends'; readonly person: P; readonly on: string }
  | { readonly kind: 'licence-elsewhere'; readonly person: P; readonly elsewhere: E }
  | { readonly kind: 'analyser-out-of-date'; readonly person: P }
  | { readonly kind: 'shared-instrument'; readonly shortage: Shortage };

/** Work with a latest day is booked two weeks ahead of it (common practice, no source). */
export const JOB_DAYS = 14;
/** A renewal takes weeks (common practice, no source). */
export const LICENCE_DAYS = 60;
/** From this priority on a job presses without any day. */
export const PRESSING_PRIORITY = 3;

export function decisionsToMake<V extends VisitAhead, J extends JobWaiting, P extends PersonAtWork, E>(
  ahead: DaysAhead<V, J, P, E>,
): readonly DecisionToMake<V, J, P, E>[] {
  const { today, visits, waiting, people, plans } = ahead;
  const soon = visits
    .filter(({ visit, isMovable }) => isMovable && visit.plannedOn <= addDays(today, CALL_DAYS))
    .map(({ visit }) => visit);
  const misfits = visits.flatMap(({ visit, conflicts }) => {
    const own = conflicts.filter((one) => !isOfPapers(one) && one.code !== 'readiness-old');
    return own.length === 0
      ? []
      : [{ kind: 'does-not-fit' as const, visit, conflicts: own, isGrave: own.some(isGrave) }];
  });
  const pressing = waiting
    .map((job) => ({
      kind: 'waiting-job' as const,
      job,
      daysLeft: job.latestOn === null ? null : daysBetween(today, job.latestOn),
    }))
    .filter(({ job, daysLeft }) => job.priority >= PRESSING_PRIORITY || (daysLeft !== null && daysLeft <= JOB_DAYS));
  const ofPlanner = <T>(found: readonly T[]): readonly T[] => (plans ? found : []);
  return [
    ...misfits.filter((one) => one.isGrave),
    ...ofPlanner(pressing),
    ...ofPlanner(soon).flatMap((visit) => {
      const answers = visit.jobs.flatMap((job) => job.agedReadiness);
      return answers.length === 0 ? [] : [{ kind: 'readiness-old' as const, visit, answers }];
    }),
    ...ofPlanner(soon)
      .filter(({ state }) => state === 'pencilled')
      .map((visit) => ({ kind: 'still-pencilled' as const, visit })),
    ...misfits.filter((one) => !one.isGrave),
    ...ofPlanner(soon)
      .filter(({ state, promisedOn }) => state === 'planned' && promisedOn === null)
      .map((visit) => ({ kind: 'nobody-told' as const, visit })),
    ...ofPlanner(
      findShortages(
        ahead.outings,
        people.map(({ person }) => person),
      ),
    ).map((shortage) => ({ kind: 'shared-instrument' as const, shortage })),
    ...people.flatMap(({ person, elsewhere }) => ofPapers(person, elsewhere, today)),
  ];
}

function ofPapers<P extends PersonAtWork, E>(
  person: P,
  elsewhere: E | null,
  today: string,
): readonly DecisionToMake<never, never, P, E>[] {
  const lastDay = person.licences
    .map(({ validTo }) => validTo)
    .toSorted()
    .at(-1);
  const lacksAnalyser = person.roles.includes('technician') && !hasInDate(person.instruments, 'analyser', today);
  return [
    ...(lastDay !== undefined && daysBetween(today, lastDay) <= LICENCE_DAYS
      ? [{ kind: 'licence-ends' as const, person, on: lastDay }]
      : []),
    ...(elsewhere === null ? [] : [{ kind: 'licence-elsewhere' as const, person, elsewhere }]),
    ...(lacksAnalyser ? [{ kind: 'analyser-out-of-date' as const, person }] : []),
  ];
}
