/** The notices that stand open against appliances, as the files are now; asked with every run, list and board that shows one. */
import { and, asc, eq, isNull, sql } from 'drizzle-orm';
import { type Notice, type OpenNotice, openNotices, type RecallOutcome } from '../domain/recalls/openNotices.ts';
import { plainName } from '../domain/recalls/recallMatch.ts';
import type { ReadableDb } from './openStore.ts';
import { preparedOnce } from './preparedOnce.ts';
import { appliances, placements, recallOutcomes, recalls, sites } from './schema/index.ts';

const allNotices = preparedOnce((db) =>
  db.select().from(recalls).orderBy(asc(recalls.issuedOn), asc(recalls.id)).prepare(),
);

/** Only appliances with something open are in it. */
export function readOpenNotices(
  db: ReadableDb,
  applianceIds: readonly string[],
): ReadonlyMap<string, readonly OpenNotice[]> {
  const rows = applianceIds.length === 0 ? [] : allNotices(db).all();
  if (rows.length === 0) return new Map();
  const byMaker = Map.groupBy(rows.map(toNotice), ({ maker }) => plainName(maker));
  const among = sql.param(JSON.stringify(applianceIds));
  const subjects = db
    .select({
      applianceId: appliances.id,
      maker: appliances.maker,
      model: appliances.model,
      serial: appliances.serial,
      altitudeM: sites.altitudeM,
    })
    .from(appliances)
    .leftJoin(placements, and(eq(placements.applianceId, appliances.id), isNull(placements.toOn)))
    .leftJoin(sites, eq(sites.id, placements.siteId))
    // One taken out of use heats nobody any more.
    .where(
      sql`${appliances.id} IN (SELECT value FROM json_each(${among})) AND (${placements.id} IS NOT NULL OR NOT EXISTS (SELECT 1 FROM placements o WHERE o.appliance_id = appliances.id))`,
    )
    .all()
    .filter(({ maker }) => byMaker.has(plainName(maker)));
  if (subjects.length === 0) return new Map();
  const settled = Map.groupBy(
    db
      .select()
      .from(recallOutcomes)
      .where(sql`${recallOutcomes.applianceId} IN (SELECT value FROM json_each(${among}))`)
      .all(),
    ({ applianceId }) => applianceId,
  );
  return new Map(
    subjects.flatMap((subject) => {
      const outcomes = new Map(
        (settled.get(subject.applianceId) ?? []).map(({ recallId, outcome }) => [recallId, outcome as RecallOutcome]),
      );
      const open = openNotices(byMaker.get(plainName(subject.maker)) ?? [], subject, outcomes);
      return open.length === 0 ? [] : [[subject.applianceId, open] as const];
    }),
  );
}

export function listOpenNotices(db: ReadableDb, applianceId: string): readonly OpenNotice[] {
  return readOpenNotices(db, [applianceId]).get(applianceId) ?? [];
}

/** Each row with what stands open against its appliance. */
export function withOpenNotices<R extends { readonly applianceId: string }>(
  db: ReadableDb,
  rows: readonly R[],
): (R & { openNotices: OpenNotice[] })[] {
  const open = readOpenNotices(
    db,
    rows.map(({ applianceId }) => applianceId),
  );
  return rows.map((row) => ({ ...row, openNotices: [...(open.get(row.applianceId) ?? [])] }));
}

function toNotice({ id, ...row }: typeof recalls.$inferSelect): Notice {
  return { recallId: id, ...row };
}
