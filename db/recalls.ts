/** Queries over notices: the notices themselves, the appliances they may be about, what was done and who was told. */
import type { Database } from 'better-sqlite3';
import { desc, eq } from 'drizzle-orm';
import type { ReadableDb } from './openStore.ts';
import { rawStatement } from './rawStatement.ts';
import { recallOutcomes, recalls } from './schema/index.ts';

export type RecallRecord = typeof recalls.$inferSelect;
export type RecallOutcomeRecord = typeof recallOutcomes.$inferSelect;

export function listRecalls(db: ReadableDb): readonly RecallRecord[] {
  return db.select().from(recalls).orderBy(desc(recalls.issuedOn), desc(recalls.id)).all();
}

export function findRecall(db: ReadableDb, recallId: string): RecallRecord | undefined {
  return db.select().from(recalls).where(eq(recalls.id, recallId)).get();
}

export function listRecallOutcomes(db: ReadableDb, recallId: string): ReadonlyMap<string, RecallOutcomeRecord> {
  const rows = db.select().from(recallOutcomes).where(eq(recallOutcomes.recallId, recallId)).all();
  return new Map(rows.map((row) => [row.applianceId, row]));
}

/** When each owner was last told of it, by appliance: prepared, and neither withdrawn nor come back. */
export function listRecallTold(
  raw: Database,
  recallId: string,
): ReadonlyMap<string, { readonly at: string; readonly channel: string }> {
  const rows = rawStatement(
    raw,
    `SELECT m.appliance_id AS applianceId, max(m.prepared_at) AS at, m.channel FROM messages m
     WHERE m.recall_id = ? AND m.appliance_id IS NOT NULL
       AND NOT EXISTS (SELECT 1 FROM message_events e WHERE e.message_id = m.id AND e.kind IN ('withdrawn', 'bounced'))
     GROUP BY m.appliance_id`,
  ).all(recallId) as { applianceId: string; at: string; channel: string }[];
  return new Map(rows.map(({ applianceId, at, channel }) => [applianceId, { at, channel }]));
}

export type RecallCandidate = {
  readonly applianceId: string;
  readonly maker: string;
  readonly model: string;
  readonly serial: string;
  readonly siteId: string | null;
  readonly altitudeM: number | null;
  readonly street: string | null;
  readonly postcode: string | null;
  readonly city: string | null;
  readonly region: string | null;
  readonly country: string | null;
  readonly customerId: string | null;
  readonly partyId: string | null;
  readonly customerName: string | null;
};

export function listMakers(raw: Database): readonly string[] {
  return rawStatement(raw, 'SELECT DISTINCT maker FROM appliances').pluck().all() as string[];
}

/** Every appliance of these makers but those taken out of use, with where it stands now. */
export function listRecallCandidates(raw: Database, makers: readonly string[]): readonly RecallCandidate[] {
  return rawStatement(
    raw,
    `SELECT a.id AS applianceId, a.maker, a.model, a.serial, s.id AS siteId, s.altitude_m AS altitudeM, s.street,
       s.postcode, s.city, s.region, s.country, c.id AS customerId, c.party_id AS partyId, q.name AS customerName
     FROM json_each(?) each
     JOIN appliances a ON a.maker = each.value
     LEFT JOIN placements p ON p.appliance_id = a.id AND p.to_on IS NULL
     LEFT JOIN sites s ON s.id = p.site_id
     LEFT JOIN customers c ON c.id = s.customer_id
     LEFT JOIN parties q ON q.id = c.party_id
     WHERE p.id IS NOT NULL OR NOT EXISTS (SELECT 1 FROM placements o WHERE o.appliance_id = a.id)
     ORDER BY q.name, a.serial, a.id`,
  ).all(JSON.stringify(makers)) as RecallCandidate[];
}
