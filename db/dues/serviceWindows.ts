/** When the open services of these appliances are due, by the job that is open for each. */
import { and, eq, inArray, isNotNull } from 'drizzle-orm';
import type { ReadableDb } from '../openStore.ts';
import { applianceDues } from '../schema/index.ts';

export type ServiceWindow = {
  /** The first day that counts for it. */
  readonly windowFrom: string;
  /** The last day before cover suffers. */
  readonly latestOn: string;
};

export function listServiceWindows(
  db: ReadableDb,
  applianceIds: readonly string[],
): ReadonlyMap<string, ServiceWindow> {
  if (applianceIds.length === 0) return new Map();
  const rows = db
    .select({
      jobId: applianceDues.jobId,
      windowFrom: applianceDues.windowFrom,
      latestOn: applianceDues.latestOn,
    })
    .from(applianceDues)
    .where(
      and(
        inArray(applianceDues.applianceId, [...new Set(applianceIds)]),
        eq(applianceDues.kind, 'service'),
        eq(applianceDues.isOpen, true),
        isNotNull(applianceDues.jobId),
      ),
    )
    .all();
  return new Map(rows.map(({ jobId, ...window }) => [jobId ?? '', window]));
}
