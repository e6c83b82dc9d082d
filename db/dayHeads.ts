/** Queries over the heads of the days and what was sealed on them; a day is one of UTC. */
import type { Database } from 'better-sqlite3';
import { desc, lt, sql } from 'drizzle-orm';
import type { ReadableDb } from './openStore.ts';
import { rawStatement } from './rawStatement.ts';
import { dayHeads } from './schema/index.ts';

type SealRow = { readonly visitId: string; readonly sequence: number; readonly sha256: string };
type HeadRow = { readonly day: string; readonly sealCount: number; readonly sha256: string };

/** As they were closed, one after the other. */
export function listDayHeads(raw: Database): readonly HeadRow[] {
  return rawStatement(
    raw,
    'SELECT day, seal_count AS sealCount, sha256 FROM day_heads ORDER BY rowid',
  ).all() as HeadRow[];
}

/** In the order in which they were made. */
export function listSealsOfDay(raw: Database, day: string): readonly SealRow[] {
  return rawStatement(
    raw,
    `SELECT visit_id AS visitId, sequence, sha256 FROM seals WHERE sealed_at >= ? AND sealed_at < ? ORDER BY rowid`,
  ).all(day, `${day}~`) as SealRow[];
}

/** Days before this one on which something was sealed since they were closed last, oldest first. */
export function listOpenDays(raw: Database, before: string): readonly string[] {
  return rawStatement(
    raw,
    `SELECT sealed.day FROM (SELECT substr(sealed_at, 1, 10) AS day, count(*) AS count FROM seals WHERE sealed_at < ? GROUP BY 1) sealed
     WHERE sealed.count > coalesce((SELECT max(h.seal_count) FROM day_heads h WHERE h.day = sealed.day), 0) ORDER BY sealed.day`,
  )
    .pluck()
    .all(before) as string[];
}

/** The newest day closed before this one, by its first head: a later one tells of the same day. */
export function findDayHeadBefore(
  db: ReadableDb,
  before: string,
): { readonly day: string; readonly sha256: string } | undefined {
  return db
    .select({ day: dayHeads.day, sha256: dayHeads.sha256 })
    .from(dayHeads)
    .where(lt(dayHeads.day, before))
    .orderBy(desc(dayHeads.day), sql`rowid`)
    .get();
}
