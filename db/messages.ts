/** Queries over what was prepared for people, and the firm's own wordings. */
import { and, asc, desc, eq, inArray, lt, sql } from 'drizzle-orm';
import type { ReadableDb } from './openStore.ts';
import { messageEvents, messages, messageTemplates, parties, staff } from './schema/index.ts';

export function listTemplates(db: ReadableDb): readonly (typeof messageTemplates.$inferSelect)[] {
  return db.select().from(messageTemplates).all();
}

export function listMessages(db: ReadableDb, page: { readonly limit: number; readonly after: string | null }) {
  return db
    .select({ message: messages, name: parties.name, preparedByName: staff.name })
    .from(messages)
    .innerJoin(parties, eq(parties.id, messages.partyId))
    .innerJoin(staff, eq(staff.id, messages.preparedById))
    .where(page.after === null ? undefined : lt(messages.id, page.after))
    .orderBy(desc(messages.id))
    .limit(page.limit)
    .all();
}

export function listMessageEvents(db: ReadableDb, messageIds: readonly string[]) {
  if (messageIds.length === 0) return [];
  return db
    .select()
    .from(messageEvents)
    .where(inArray(messageEvents.messageId, [...messageIds]))
    .orderBy(asc(messageEvents.at), asc(messageEvents.id))
    .all();
}

export function countMessages(db: ReadableDb, messageIds: readonly string[]): number {
  return db
    .select({ id: messages.id })
    .from(messages)
    .where(inArray(messages.id, [...messageIds]))
    .all().length;
}

/** What makes two messages the same one. */
export type SameMessage = {
  readonly kind: string;
  readonly applianceId: string;
  readonly visitId: string | null;
  readonly recallId: string | null;
  readonly aboutOn: string | null;
};

/** When the same was last prepared, and neither withdrawn nor come back; null: never. */
export function lastPreparedAt(db: ReadableDb, same: SameMessage): string | null {
  return (
    db
      .select({ at: sql<string | null>`max(${messages.preparedAt})` })
      .from(messages)
      .where(
        and(
          eq(messages.kind, same.kind),
          eq(messages.applianceId, same.applianceId),
          sql`${messages.visitId} IS ${same.visitId}`,
          sql`${messages.aboutOn} IS ${same.aboutOn}`,
          sql`${messages.recallId} IS ${same.recallId}`,
          sql`NOT EXISTS (SELECT 1 FROM ${messageEvents} WHERE ${messageEvents.messageId} = ${messages.id} AND ${messageEvents.kind} IN ('withdrawn', 'bounced'))`,
        ),
      )
      .get()?.at ?? null
  );
}
