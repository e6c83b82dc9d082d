/** The firm's own table of travel times. */
import { desc, eq, isNull } from 'drizzle-orm';
import type { ReadableDb } from './openStore.ts';
import { staff, travelTables } from './schema/index.ts';

export type TravelTableRow = typeof travelTables.$inferSelect & { readonly loadedByName: string };

/** The one in use, newest first when there are several. */
export function findTravelTable(db: ReadableDb): TravelTableRow | undefined {
  const row = db
    .select({ table: travelTables, loadedByName: staff.name })
    .from(travelTables)
    .innerJoin(staff, eq(staff.id, travelTables.loadedById))
    .where(isNull(travelTables.withdrawnAt))
    .orderBy(desc(travelTables.loadedAt), desc(travelTables.id))
    .limit(1)
    .get();
  return row === undefined ? undefined : { ...row.table, loadedByName: row.loadedByName };
}

/** All that were not laid aside; more than one only where two machines loaded one each. */
export function listTravelTables(db: ReadableDb): readonly { readonly id: string }[] {
  return db.select({ id: travelTables.id }).from(travelTables).where(isNull(travelTables.withdrawnAt)).all();
}
