/**
 * Whether a run was left so long that it has to be taken up again before anything is put into it: a laptop that was shut on
 * Friday and opened on Monday has seen no visit end, and yet a tightness test of Friday is as old as after a return trip.
 */
import type { ModelSheet } from './modelSheet.ts';
import { isBefore, secondsBetween } from './progress/instants.ts';
import type { RunRecord } from './runRecord.ts';

/** A clock that was ahead and has been put right: what was taken up "later than now" would never be new again. */
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
  const last = [...instantsOf(record), ...(reopenedAt === null ? [] : [reopenedAt])].reduce<string | null>(
    (latest, one) => (latest === null || isBefore(latest, one) ? one : latest),
    record.startedAt,
  );
  // Whatever lapses first: after a shorter break nothing has.
  const shortestS = Math.min(...Object.values(sheet.lapseHours)) * 3600;
  return last !== null && secondsBetween(last, now) > shortestS;
}

/** When anything was recorded, by the clock of the laptop or of the paper. */
function instantsOf(record: RunRecord): readonly string[] {
  return [
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
