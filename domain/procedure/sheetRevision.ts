/** Revisions of a sheet in order: year and month, then the count within the month as a number (2026-03.10 is after 2026-03.2). */

/** Below zero: `a` is older. */
export function compareRevisions(a: string, b: string): number {
  const [monthA, countA] = partsOf(a);
  const [monthB, countB] = partsOf(b);
  return monthA === monthB ? countA - countB : monthA < monthB ? -1 : 1;
}

/** The first revision of this month, or the next one after the newest there is. */
export function nextRevision(existing: readonly string[], today: string): string {
  const thisMonth = today.slice(0, 7);
  const newest = existing.toSorted(compareRevisions).at(-1);
  if (newest === undefined || compareRevisions(newest, thisMonth) < 0) return thisMonth;
  const [month, count] = partsOf(newest);
  return `${month}.${Math.max(count, 1) + 1}`;
}

function partsOf(revision: string): readonly [string, number] {
  const [month = '', count = '0'] = revision.split('.');
  return [month, Number(count)];
}
