/** Houses that changed hands, and what was done in the new owner's name since. */
import type { Database } from 'better-sqlite3';
import { asc, eq } from 'drizzle-orm';
import { alias } from 'drizzle-orm/sqlite-core';
import { TRANSFER_CONSEQUENCES, type TransferConsequence } from '../domain/vocabulary/places.ts';
import type { ReadableDb } from './openStore.ts';
import { rawStatement } from './rawStatement.ts';
import { customers, parties, siteTransfers, staff } from './schema/index.ts';

export type SiteTransfer = typeof siteTransfers.$inferSelect;

/** All of a site with the names on both sides, the oldest first; those taken back too. */
export function listSiteTransfers(db: ReadableDb, siteId: string) {
  const fromCustomer = alias(customers, 'from_customer');
  const toCustomer = alias(customers, 'to_customer');
  const fromParty = alias(parties, 'from_party');
  const toParty = alias(parties, 'to_party');
  return db
    .select({
      transfer: siteTransfers,
      fromName: fromParty.name,
      fromErasedAt: fromParty.erasedAt,
      toName: toParty.name,
      toPartyId: toParty.id,
      byName: staff.name,
    })
    .from(siteTransfers)
    .innerJoin(fromCustomer, eq(fromCustomer.id, siteTransfers.fromCustomerId))
    .innerJoin(fromParty, eq(fromParty.id, fromCustomer.partyId))
    .innerJoin(toCustomer, eq(toCustomer.id, siteTransfers.toCustomerId))
    .innerJoin(toParty, eq(toParty.id, toCustomer.partyId))
    .innerJoin(staff, eq(staff.id, siteTransfers.byId))
    .where(eq(siteTransfers.siteId, siteId))
    .orderBy(asc(siteTransfers.at), asc(siteTransfers.id))
    .all();
}

/** The newest that stands. */
export function findLastTransfer(db: ReadableDb, siteId: string) {
  return listSiteTransfers(db, siteId).findLast(({ transfer }) => transfer.takenBackAt === null);
}

/**
 * What went out or was agreed in the new owner's name since: a sealed record names the owner of its day, a maker was told, an
 * agreement or a letter was made for them, they signed, or somebody changed who is who there.
 */
export function listTransferConsequences(raw: Database, transfer: SiteTransfer): readonly TransferConsequence[] {
  const given = {
    siteId: transfer.siteId,
    at: transfer.at,
    changedOn: transfer.changedOn,
    customerId: transfer.toCustomerId,
    roles: JSON.stringify(transfer.roles),
  };
  return TRANSFER_CONSEQUENCES.filter(
    (what) => rawStatement(raw, `SELECT EXISTS (${CONSEQUENCE_SQL[what]})`).pluck().get(given) === 1,
  );
}

const HERE = 'SELECT appliance_id FROM placements WHERE site_id = @siteId';
const NEW_PARTY = '(SELECT party_id FROM customers WHERE id = @customerId)';
const RUN_HERE = `JOIN runs r ON r.id = x.run_id JOIN jobs j ON j.id = r.job_id WHERE j.appliance_id IN (${HERE})`;
const CONSEQUENCE_SQL: Readonly<Record<TransferConsequence, string>> = {
  seals: `SELECT 1 FROM seals x ${RUN_HERE} AND x.sealed_at >= @at`,
  agreements: `SELECT 1 FROM service_agreements WHERE appliance_id IN (${HERE}) AND party_id = ${NEW_PARTY}`,
  messages: `SELECT 1 FROM messages WHERE appliance_id IN (${HERE}) AND party_id = ${NEW_PARTY} AND prepared_at >= @at`,
  notices: `SELECT 1 FROM transfer_notices WHERE appliance_id IN (${HERE}) AND changed_on = @changedOn`,
  'sign-offs': `SELECT 1 FROM sign_offs x ${RUN_HERE} AND x.party_id = ${NEW_PARTY} AND x.at >= @at`,
  roles: `SELECT 1 FROM json_each(@roles, '$.ended') e LEFT JOIN party_roles o ON o.id = e.value WHERE o.to_on IS NOT @changedOn
    UNION ALL SELECT 1 FROM json_each(@roles, '$.added') a LEFT JOIN party_roles o ON o.id = a.value WHERE o.id IS NULL`,
};
