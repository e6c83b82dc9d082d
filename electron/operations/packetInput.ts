/** What a packet is made from, and what it still lacks. */
import type { ReadableDb } from '../../db/openStore.ts';
import { findLastVisitOfJob } from '../../db/registrations.ts';
import type { PacketGap } from '../contract/registrations.ts';
import { loadRun, readRunState } from './runState.ts';

export function listPacketGaps(db: ReadableDb, runId: string, now: string): readonly PacketGap[] {
  const { job } = loadRun(db, runId);
  const visit = findLastVisitOfJob(db, job.id);
  if (visit === undefined) return [];
  const { progress } = readRunState(db, runId, visit.id, now);
  return progress.gates.registration.map((blocker) => ({
    code: blocker.because[0]?.code ?? 'not-answered',
    where: 'visit',
    stepKey: blocker.stepKey,
    itemKey: blocker.itemKey,
    detail: null,
  }));
}
