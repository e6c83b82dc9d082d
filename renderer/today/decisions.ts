/** What needs a decision now, from the days ahead: a fact each, with where it is decided. */
import { type AgedAnswer, CALL_DAYS } from '../../domain/procedure/agedReadiness.ts';
import { type Conflict, isGrave } from '../../domain/schedule/dayConflicts.ts';
import { hasInDate } from '../../domain/schedule/heldInstruments.ts';
import { findShortages, type Shortage } from '../../domain/schedule/sharedInstruments.ts';
import type { BoardTechnician, BoardVisit, UnplacedJob } from '../../electron/contract/board.ts';
import { type BoardData, outingsOf, toRows } from '../board/boardModel.ts';
import { isOfPapers, type Papers, papersOf } from '../board/ofPapers.ts';
import { addDays, daysBetween } from '../visits/week.ts';

export type Decision =
  | {
      readonly kind: 'does-not-fit';
      readonly visit: BoardVisit;
      readonly isGrave: boolean;
      readonly conflicts: readonly Conflict[];
    }
  /** Given so long ago that it has to be asked again before going. */
  | { readonly kind: 'readiness-old'; readonly visit: BoardVisit; readonly answers: readonly AgedAnswer[] }
  | { readonly kind: 'still-pencilled'; readonly visit: BoardVisit }
  | { readonly kind: 'nobody-told'; readonly visit: BoardVisit }
  | { readonly kind: 'waiting-job'; readonly job: UnplacedJob; readonly daysLeft: number | null }
  | { readonly kind: 'licence-ends'; readonly person: BoardTechnician; readonly on: string }
  | {
      readonly kind: 'licence-elsewhere';
      readonly person: BoardTechnician;
      readonly elsewhere: NonNullable<Papers['elsewhere']>;
    }
  | { readonly kind: 'analyser-out-of-date'; readonly person: BoardTechnician }
  | { readonly kind: 'shared-instrument'; readonly shortage: Shortage; readonly names: ReadonlyMap<string, string> };

const JOB_DAYS = 14;
/** A renewal takes weeks (common practice). */
const LICENCE_DAYS = 60;

/** `staffId`: only what concerns that person; null: everybody. */
export function findDecisions(
  data: BoardData,
  days: readonly string[],
  today: string,
  staffId: string | null,
): readonly Decision[] {
  const rows = toRows(data, days).filter(({ technician }) => staffId === null || technician.staffId === staffId);
  const blocks = rows.flatMap((row) => row.days.flatMap((day) => day.blocks));
  const unique = [...new Map(blocks.map((block) => [block.visit.visitId, block])).values()];
  const soon = unique.filter(({ visit, isMovable }) => isMovable && visit.plannedOn <= addDays(today, CALL_DAYS));
  const misfits = unique
    .map(({ visit, conflicts }) => ({
      visit,
      conflicts: conflicts.filter((one) => !isOfPapers(one) && one.code !== 'readiness-old'),
    }))
    .filter(({ conflicts }) => conflicts.length > 0)
    .map(({ visit, conflicts }) => ({
      kind: 'does-not-fit' as const,
      visit,
      conflicts,
      isGrave: conflicts.some(isGrave),
    }));
  const pressing = data.unplaced
    .map((job) => ({
      kind: 'waiting-job' as const,
      job,
      daysLeft: job.latestOn === null ? null : daysBetween(today, job.latestOn),
    }))
    .filter(({ job, daysLeft }) => job.priority >= 3 || (daysLeft !== null && daysLeft <= JOB_DAYS));
  const plans = staffId === null;
  const names = new Map(data.technicians.map((one) => [one.staffId, one.name]));
  return [
    ...misfits.filter((one) => one.isGrave),
    ...(plans ? pressing : []),
    ...(plans ? soon : []).flatMap(({ visit }) => {
      const answers = visit.jobs.flatMap((job) => job.agedReadiness);
      return answers.length === 0 ? [] : [{ kind: 'readiness-old', visit, answers } as const];
    }),
    ...(plans ? soon.filter(({ visit }) => visit.state === 'pencilled') : []).map(
      ({ visit }) => ({ kind: 'still-pencilled', visit }) as const,
    ),
    ...misfits.filter((one) => !one.isGrave),
    ...(plans ? soon.filter(({ visit }) => visit.state === 'planned' && visit.promisedOn === null) : []).map(
      ({ visit }) => ({ kind: 'nobody-told', visit }) as const,
    ),
    ...(plans ? findShortages(outingsOf(data), data.technicians) : []).map(
      (shortage) => ({ kind: 'shared-instrument', shortage, names }) as const,
    ),
    ...rows.flatMap((row) => ownPapers(row.technician, papersOf(row), today)),
  ];
}

function ownPapers(person: BoardTechnician, { elsewhere }: Papers, today: string): readonly Decision[] {
  const lastDay = person.licences
    .map(({ validTo }) => validTo)
    .toSorted()
    .at(-1);
  const isTechnician = person.roles.includes('technician');
  return [
    ...(lastDay !== undefined && daysBetween(today, lastDay) <= LICENCE_DAYS
      ? [{ kind: 'licence-ends', person, on: lastDay } as const]
      : []),
    ...(elsewhere === null ? [] : [{ kind: 'licence-elsewhere', person, elsewhere } as const]),
    ...(isTechnician && !hasInDate(person.instruments, 'analyser', today)
      ? [{ kind: 'analyser-out-of-date', person } as const]
      : []),
  ];
}
