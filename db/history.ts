/** The change log of one record, newest first. */
import { and, desc, eq } from 'drizzle-orm';
import type { ReadableDb } from './openStore.ts';
import { ops } from './schema/index.ts';

export function listOperations(db: ReadableDb, entity: string, entityId: string): readonly (typeof ops.$inferSelect)[] {
  return db
    .select()
    .from(ops)
    .where(and(eq(ops.entity, entity), eq(ops.entityId, entityId)))
    .orderBy(desc(ops.hlc))
    .limit(500)
    .all();
}
