/**
 * Which revision of its maker's sheet an appliance's cover is counted by. What a maker states for a boiler is stated when
 * it is sold and put in: terms printed later are for later boilers, and a new revision moves no date of an old one. Terms that
 * were wrong from the start are put right by a sheet of its own, chosen on the appliance. Common practice, no source.
 */
import { compareRevisions } from '../procedure/sheetRevision.ts';
import type { KnownDate } from './knownDate.ts';

export type SheetIssue = { readonly id: string; readonly revision: string };

/**
 * `started-with`: its startup was run with it. `in-force`: the newest there was when it was put in. `oldest`: all on file are
 * later than it. `newest`: no day of it is known.
 */
export const COVER_REVISION_REASONS = ['started-with', 'in-force', 'oldest', 'newest'] as const;
export type CoverRevisionReason = (typeof COVER_REVISION_REASONS)[number];
export type CoverRevision = { readonly id: string; readonly reason: CoverRevisionReason };

/** `issues` oldest first, all of the sheet the appliance has now; `startedWithId` may be a revision of another sheet, and counts for nothing then. */
export function coverRevision({
  issues,
  startedWithId,
  dates,
}: {
  readonly issues: readonly SheetIssue[];
  readonly startedWithId: string | null;
  readonly dates: readonly KnownDate[];
}): CoverRevision | null {
  const newest = issues.at(-1);
  const oldest = issues[0];
  if (newest === undefined || oldest === undefined) return null;
  const startedWith = issues.find(({ id }) => id === startedWithId);
  if (startedWith !== undefined) return { id: startedWith.id, reason: 'started-with' };
  const month = monthPutIn(dates);
  if (month === null) return { id: newest.id, reason: 'newest' };
  // A second revision of the same month, `2026-03.2`, is still of that month.
  const inForce = issues.findLast(({ revision }) => revision.slice(0, 7) <= month);
  return inForce === undefined ? { id: oldest.id, reason: 'oldest' } : { id: inForce.id, reason: 'in-force' };
}

export function oldestFirst(issues: readonly SheetIssue[]): readonly SheetIssue[] {
  return issues.toSorted((a, b) => compareRevisions(a.revision, b.revision));
}

const PUT_IN = ['installed', 'started', 'sold'] as const;

/** Of a year alone its last month: a sheet of that year may have been in force. */
function monthPutIn(dates: readonly KnownDate[]): string | null {
  for (const kind of PUT_IN) {
    const known = dates.find((date) => date.kind === kind);
    if (known !== undefined) return known.precision === 'year' ? `${known.on.slice(0, 4)}-12` : known.on.slice(0, 7);
  }
  return null;
}
