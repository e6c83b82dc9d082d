/** Fixes a run's record: canonical JSON, its hash, chained to what the visit sealed before; afterwards nothing in it changes. */
import { randomBytes } from 'node:crypto';
import type { Database } from 'better-sqlite3';
import { runs, visits } from '../../db/schema/index.ts';
import { listSealsOfVisit } from '../../db/seals.ts';
import type { StoreWriter } from '../../db/storeWriter.ts';
import type { VisitRecord } from '../../db/visits.ts';
import { buildSealedRecord } from '../sealing/buildSealedRecord.ts';
import { addSeal } from './addSeal.ts';
import { readRecordInput } from './recordInput.ts';
import type { RunState } from './runState.ts';

export function sealRun(
  writer: StoreWriter,
  raw: Database,
  state: RunState,
  visit: VisitRecord,
  by: { readonly sealedById: string; readonly sealedAt: string },
): { readonly sha256: string; readonly sequence: number } {
  const before = listSealsOfVisit(writer.db, visit.id);
  const place = {
    sequence: before.length + 1,
    kind: 'sealed' as const,
    previousSha256: before.at(-1)?.sha256 ?? null,
    ...by,
  };
  const sealed = buildSealedRecord(
    { ...readRecordInput(writer.db, state, visit, by.sealedAt), seal: { ...place, amends: null } },
    () => randomBytes(16).toString('hex'),
  );
  const sha256 = addSeal(writer, raw, { visitId: visit.id, runId: state.run.id, ...place }, sealed);
  writer.update(runs, state.run.id, { sealedAt: by.sealedAt });
  writer.update(visits, visit.id, { state: 'signed' });
  return { sha256, sequence: place.sequence };
}
