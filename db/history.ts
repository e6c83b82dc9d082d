/** The change log of one record, newest first. */
import { and, asc, desc, eq } from 'drizzle-orm';
import type { ReadableDb } from './openStore.ts';
import { ops } from './schema/index.ts';
import type { LoggedField } from './schema/log.ts';

export function listOperations(db: ReadableDb, entity: string, entityId: string): readonly (typeof ops.$inferSelect)[] {
  return db
    .select()
    .from(ops)
    .where(and(eq(ops.entity, entity), eq(ops.entityId, entityId)))
    .orderBy(desc(ops.hlc))
    .limit(500)
    .all();
}

/** What was written when the record came to be. */
export function findFirstLogged(
  db: ReadableDb,
  entity: string,
  entityId: string,
): Readonly<Record<string, LoggedField>> | undefined {
  return db
    .select({ fields: ops.fields })
    .from(ops)
    .where(and(eq(ops.entity, entity), eq(ops.entityId, entityId), eq(ops.kind, 'insert')))
    .orderBy(asc(ops.hlc))
    .get()?.fields;
}
