/** The day a visit counts for: the one it was begun on, at the site; until then the one it is planned for. */
import type { ReadableDb } from '../../db/openStore.ts';
import { findSite } from '../../db/sites.ts';
import type { VisitRecord } from '../../db/visits.ts';
import { dayIn } from './today.ts';

export function visitDay(
  db: ReadableDb,
  visit: Pick<VisitRecord, 'siteId' | 'plannedOn'> & { readonly startedAt: string | null },
): string {
  return visit.startedAt === null
    ? visit.plannedOn
    : dayIn(findSite(db, visit.siteId)?.timeZone ?? 'UTC', visit.startedAt);
}
