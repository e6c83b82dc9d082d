/** What is on file of an appliance's first year and of its new owners, each once. */
import { and, eq } from 'drizzle-orm';
import type { ReadableDb } from './openStore.ts';
import { firstYearContacts, transferNotices } from './schema/index.ts';

type ContactKind = (typeof firstYearContacts.$inferSelect)['kind'];

export function findFirstYearContact(db: ReadableDb, applianceId: string, kind: ContactKind): string | undefined {
  return db
    .select({ id: firstYearContacts.id })
    .from(firstYearContacts)
    .where(and(eq(firstYearContacts.applianceId, applianceId), eq(firstYearContacts.kind, kind)))
    .get()?.id;
}

/** That the maker was told of the owner who came on that day. */
export function findTransferNotice(db: ReadableDb, applianceId: string, changedOn: string): string | undefined {
  return db
    .select({ id: transferNotices.id })
    .from(transferNotices)
    .where(and(eq(transferNotices.applianceId, applianceId), eq(transferNotices.changedOn, changedOn)))
    .get()?.id;
}
