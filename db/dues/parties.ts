/** Several parties at once, by id. */
import { inArray } from 'drizzle-orm';
import type { ReadableDb } from '../openStore.ts';
import { parties } from '../schema/index.ts';

export function findParties(
  db: ReadableDb,
  partyIds: readonly string[],
): ReadonlyMap<string, typeof parties.$inferSelect> {
  if (partyIds.length === 0) return new Map();
  const rows = db
    .select()
    .from(parties)
    .where(inArray(parties.id, [...new Set(partyIds)]))
    .all();
  return new Map(rows.map((row) => [row.id, row]));
}
