/** Queries over customers, parties and their roles. */
import { and, asc, desc, eq, gt, inArray, like, or, type SQL, sql } from 'drizzle-orm';
import { CUSTOMER_FINDS } from './finds/customerFinds.ts';
import { inOrderOf } from './finds/inOrderOf.ts';
import { findIds } from './finds/searchCache.ts';
import type { ReadableDb, Store } from './openStore.ts';
import { preparedOnce } from './preparedOnce.ts';
import { consents, customers, makeSafes, parties, partyRoles, placements, sites } from './schema/index.ts';

export type PartyRow = typeof parties.$inferSelect;

export type CustomerListRow = {
  readonly customerId: string;
  readonly name: string;
  readonly phone: string | null;
  readonly city: string | null;
  readonly siteCount: number;
  readonly applianceCount: number;
  readonly openMakeSafes: number;
};

/** A page by name; with a query, by when they were filed: every word in name, phone or an address, or all of it a serial of theirs. */
export function listCustomers(
  { db, raw }: Pick<Store, 'db' | 'raw'>,
  options: { readonly query: string; readonly limit: number; readonly after: string | null },
): readonly CustomerListRow[] {
  const found = findIds(raw, CUSTOMER_FINDS, options);
  if (found !== null) return customersOf(db, found);
  const next = options.after === null ? undefined : afterInNames(db, options.after);
  if (next === undefined) return firstPage(db).all({ limit: options.limit });
  return customerRows(db).where(next).limit(options.limit).all();
}

function customersOf(db: ReadableDb, ids: readonly string[]): readonly CustomerListRow[] {
  const rows = customerRows(db)
    .where(inArray(customers.id, [...ids]))
    .all();
  return inOrderOf(ids, rows, ({ customerId }) => customerId);
}

function afterInNames(db: ReadableDb, customerId: string): SQL | undefined {
  const last = db
    .select({ name: parties.name })
    .from(customers)
    .innerJoin(parties, eq(parties.id, customers.partyId))
    .where(eq(customers.id, customerId))
    .get();
  if (last === undefined) return undefined;
  return or(gt(parties.name, last.name), and(eq(parties.name, last.name), gt(customers.id, customerId)));
}

/** The page that is opened most. */
const firstPage = preparedOnce((db) => customerRows(db).limit(sql.placeholder('limit')).prepare());

function customerRows(db: ReadableDb) {
  return db
    .select({
      customerId: customers.id,
      name: parties.name,
      phone: parties.phoneTyped,
      city: parties.city,
      siteCount: sql<number>`(SELECT count(*) FROM ${sites} WHERE ${sites.customerId} = ${customers.id})`,
      applianceCount: sql<number>`(SELECT count(*) FROM ${placements} JOIN ${sites} ON ${sites.id} = ${placements.siteId} WHERE ${sites.customerId} = ${customers.id} AND ${placements.toOn} IS NULL)`,
      openMakeSafes: sql<number>`(SELECT count(*) FROM ${makeSafes} JOIN ${sites} ON ${sites.id} = ${makeSafes.siteId} WHERE ${sites.customerId} = ${customers.id} AND ${makeSafes.closedAt} IS NULL)`,
    })
    .from(customers)
    .innerJoin(parties, eq(parties.id, customers.partyId))
    .orderBy(asc(parties.name), asc(customers.id))
    .$dynamic();
}

export function findCustomer(
  db: ReadableDb,
  customerId: string,
): { readonly customer: typeof customers.$inferSelect; readonly party: PartyRow } | undefined {
  return db
    .select({ customer: customers, party: parties })
    .from(customers)
    .innerJoin(parties, eq(parties.id, customers.partyId))
    .where(eq(customers.id, customerId))
    .get();
}

export function findParty(db: ReadableDb, partyId: string): PartyRow | undefined {
  return db.select().from(parties).where(eq(parties.id, partyId)).get();
}

/** Newest decision first. */
export function listConsents(db: ReadableDb, partyId: string): readonly (typeof consents.$inferSelect)[] {
  return db
    .select()
    .from(consents)
    .where(eq(consents.partyId, partyId))
    .orderBy(desc(consents.on), desc(consents.id))
    .all();
}

/** Customers that share a phone, an e-mail or the folded name: candidates for "the same?". */
export function listSimilarCustomers(
  db: ReadableDb,
  party: { readonly foldedName: string; readonly phoneE164: string | null; readonly email: string | null },
): readonly { readonly customerId: string; readonly party: PartyRow }[] {
  const alike: SQL[] = [like(parties.searchText, `${party.foldedName}%`)];
  if (party.phoneE164 !== null) alike.push(eq(parties.phoneE164, party.phoneE164));
  if (party.email !== null) alike.push(sql`lower(${parties.email}) = ${party.email.toLowerCase()}`);
  return db
    .select({ customerId: customers.id, party: parties })
    .from(customers)
    .innerJoin(parties, eq(parties.id, customers.partyId))
    .where(or(...alike))
    .limit(10)
    .all();
}

export type RoleRow = {
  readonly roleId: string;
  readonly partyId: string;
  readonly name: string;
  readonly role: string;
  readonly fromOn: string | null;
  readonly toOn: string | null;
};

export function listSiteRoles(db: ReadableDb, siteId: string): readonly (RoleRow & { readonly party: PartyRow })[] {
  return db
    .select({
      roleId: partyRoles.id,
      partyId: parties.id,
      name: parties.name,
      role: partyRoles.role,
      fromOn: partyRoles.fromOn,
      toOn: partyRoles.toOn,
      party: parties,
    })
    .from(partyRoles)
    .innerJoin(parties, eq(parties.id, partyRoles.partyId))
    .where(eq(partyRoles.siteId, siteId))
    .orderBy(asc(partyRoles.role), asc(parties.name))
    .all();
}

export type PartyRoleRow = typeof partyRoles.$inferSelect;

export function findRole(db: ReadableDb, roleId: string): PartyRoleRow | undefined {
  return db.select().from(partyRoles).where(eq(partyRoles.id, roleId)).get();
}
