/**
 * Whether a run was left so long that it has to be taken up again before anything is put into it: a laptop that was shut on
 * Friday and opened on Monday has seen no visit end, and yet a tightness test of Friday is as old as after a return trip.
 */
import type { ModelSheet } from './modelSheet.ts';
import { isBefore, secondsBetween } from './progress/instants.ts';
import type { RunProgress } from './progressTypes.ts';
import type { RunRecord } from './runRecord.ts';

/** A clock that was ahead and has been put right: what is dated "later than now" says nothing of how long nobody was there. */
const AHEAD_S = 5 * 60;

export function mustBeTakenUp({
  record,
  sheet,
  reopenedAt,
  now,
}: {
  readonly record: RunRecord;
  readonly sheet: Pick<ModelSheet, 'lapseHours'>;
  readonly reopenedAt: string | null;
  readonly now: string;
}): boolean {
  if (reopenedAt !== null && secondsBetween(now, reopenedAt) > AHEAD_S) return true;
  const last = lastRecordedAt(record, now);
  const since = reopenedAt !== null && (last === null || isBefore(last, reopenedAt)) ? reopenedAt : last;
  return since !== null && secondsBetween(since, now) > shortestLapseS(sheet);
}

/** Whatever lapses first: after a shorter break nothing has. */
export function shortestLapseS(sheet: Pick<ModelSheet, 'lapseHours'>): number {
  return Math.min(...Object.values(sheet.lapseHours)) * 3600;
}

/** Done on the day, and only the end was not pressed: there is nothing to take up. */
export function isOnlyToBeEnded(progress: Pick<RunProgress, 'gates'>): boolean {
  return progress.gates.leaving.length === 0;
}

/** The latest that is not later than now; null: nothing is. */
export function lastRecordedAt(record: RunRecord, now: string): string | null {
  return instantsOf(record)
    .filter((one) => secondsBetween(now, one) <= AHEAD_S)
    .reduce<string | null>((latest, one) => (latest === null || isBefore(latest, one) ? one : latest), null);
}

/** When anything was recorded, by the clock of the laptop or of the paper. */
function instantsOf(record: RunRecord): readonly string[] {
  return [
    ...(record.startedAt === null ? [] : [record.startedAt]),
    ...record.answers.map(({ at }) => at),
    ...record.readings.map(({ measuredAt }) => measuredAt),
    ...record.holds.flatMap(({ startedAt, endedAt }) => [startedAt, endedAt ?? startedAt]),
    ...record.tunings.flatMap(({ startedAt, finishedAt }) => [startedAt, finishedAt ?? startedAt]),
    ...record.firingPoints.map(({ reachedAt }) => reachedAt),
    ...record.signOffs.map(({ at }) => at),
    ...(record.parts ?? []).map(({ at }) => at),
    ...(record.lockouts ?? []).map(({ at }) => at),
  ];
}
