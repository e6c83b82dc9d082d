/**
 * Whether a run was left so long, in a visit that never ended, that it is taken up again before anything is put into it. When
 * something was last recorded is remembered per store: only once in hours has the whole run to be read for it.
 */
import type { ReadableDb } from '../../db/openStore.ts';
import { readRunRecord } from '../../db/runRecord.ts';
import type { VisitRecord } from '../../db/visits.ts';
import {
  isOnlyToBeEnded,
  lastRecordedAt,
  mustBeTakenUp,
  shortestLapseS,
} from '../../domain/procedure/mustBeTakenUp.ts';
import { secondsBetween } from '../../domain/procedure/progress/instants.ts';
import type { HandlerContext } from './handler.ts';
import { type LoadedRun, readRunState } from './runState.ts';

/** By run: something was recorded then, and perhaps later. */
const lastSeen = new WeakMap<ReadableDb, Map<string, string>>();

export function wasLeft(
  { db, now }: Pick<HandlerContext, 'db' | 'now'>,
  visit: Pick<VisitRecord, 'id' | 'outcome'>,
  { run, job, sheet }: LoadedRun,
): boolean {
  if (visit.outcome !== null) return false;
  const { reopenedAt } = run;
  const seen = lastSeen.get(db) ?? new Map<string, string>();
  lastSeen.set(db, seen);
  const known = seen.get(run.id);
  const sinceS = known === undefined ? null : secondsBetween(known, now);
  const isFresh = sinceS !== null && sinceS >= 0 && sinceS <= shortestLapseS(sheet);
  if (isFresh && (reopenedAt === null || secondsBetween(reopenedAt, now) >= 0)) return false;
  const record = readRunRecord(db, run, job);
  const last = lastRecordedAt(record, now);
  if (last !== null) seen.set(run.id, last);
  if (!mustBeTakenUp({ record, sheet, reopenedAt, now })) return false;
  return !isOnlyToBeEnded(readRunState(db, run.id, visit.id, now).progress);
}
