/** Writes a seal and what its record hides; the days before it are closed first, so that it is held against their heads. */
import type { Database } from 'better-sqlite3';
import { sealDisclosures, seals } from '../../db/schema/index.ts';
import type { StoreWriter } from '../../db/storeWriter.ts';
import { canonicalJson, sealHash } from '../sealing/canonicalJson.ts';
import type { Disclosure } from '../sealing/commitment.ts';
import type { SealedRecord } from '../sealing/sealedRecord.ts';
import { closeDays } from './closeDays.ts';

type Place = Pick<
  typeof seals.$inferInsert,
  'visitId' | 'runId' | 'kind' | 'sequence' | 'previousSha256' | 'sealedById' | 'sealedAt'
>;

/** Answers the hash. */
export function addSeal(
  writer: StoreWriter,
  raw: Database,
  place: Place,
  sealed: { readonly record: SealedRecord; readonly disclosures: readonly Disclosure[] },
): string {
  closeDays(writer, raw, place.sealedAt);
  const canonical = canonicalJson(sealed.record);
  const sha256 = sealHash(canonical);
  const sealId = writer.insert(seals, { ...place, canonical, sha256 });
  for (const disclosure of sealed.disclosures) writer.insert(sealDisclosures, { sealId, ...disclosure });
  return sha256;
}
