/** Fixes a run's record: canonical JSON, its hash, chained to what the visit sealed before; afterwards nothing in it changes. */
import { randomBytes } from 'node:crypto';
import type { Database } from 'better-sqlite3';
import { runs, sealDisclosures, seals, visits } from '../../db/schema/index.ts';
import { listSealsOfVisit } from '../../db/seals.ts';
import type { StoreWriter } from '../../db/storeWriter.ts';
import type { VisitRecord } from '../../db/visits.ts';
import { buildSealedRecord } from '../sealing/buildSealedRecord.ts';
import { canonicalJson, sealHash } from '../sealing/canonicalJson.ts';
import { closeDays } from './closeDays.ts';
import { readRecordInput } from './recordInput.ts';
import type { RunState } from './runState.ts';

export function sealRun(
  writer: StoreWriter,
  raw: Database,
  state: RunState,
  visit: VisitRecord,
  by: { readonly sealedById: string; readonly sealedAt: string },
): { readonly sha256: string; readonly sequence: number } {
  closeDays(writer, raw, by.sealedAt);
  const before = listSealsOfVisit(writer.db, visit.id);
  const place = {
    sequence: before.length + 1,
    kind: 'sealed' as const,
    previousSha256: before.at(-1)?.sha256 ?? null,
    ...by,
  };
  const { record, disclosures } = buildSealedRecord(
    { ...readRecordInput(writer.db, state, visit, by.sealedAt), seal: { ...place, amends: null } },
    () => randomBytes(16).toString('hex'),
  );
  const canonical = canonicalJson(record);
  const sha256 = sealHash(canonical);
  const sealId = writer.insert(seals, { visitId: visit.id, runId: state.run.id, ...place, canonical, sha256 });
  for (const disclosure of disclosures) writer.insert(sealDisclosures, { sealId, ...disclosure });
  writer.update(runs, state.run.id, { sealedAt: by.sealedAt });
  writer.update(visits, visit.id, { state: 'signed' });
  return { sha256, sequence: place.sequence };
}
