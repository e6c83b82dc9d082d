/** How much each packet still lacks, counted once and kept until something it rests on changes. */
import type { Database } from 'better-sqlite3';
import { rawStatement } from '../rawStatement.ts';

/** What is still being recorded grows old by itself: waits end, answers lapse. */
const UNSEALED_FRESH_MIN = 10;

/** Runs of registrations not yet handed in whose gaps nobody has counted, those with the nearest last day first. */
export function listUncounted(raw: Database, now: string): readonly string[] {
  return rawStatement(
    raw,
    `SELECT r.id FROM appliance_dues d JOIN runs r ON r.job_id = d.job_id
     LEFT JOIN registration_gaps g ON g.run_id = r.id
     WHERE d.kind = 'registration' AND d.is_open = 1 AND d.stage = 'recording'
       AND (g.run_id IS NULL OR (g.is_sealed = 0 AND g.counted_at < ?))
     ORDER BY d.due_on`,
  )
    .pluck()
    .all(agedBefore(now)) as string[];
}

/** The same of some appliances; of those without a known last day too. */
export function listUncountedOf(raw: Database, now: string, applianceIds: readonly string[]): readonly string[] {
  return rawStatement(
    raw,
    `SELECT r.id FROM json_each(?) each
     JOIN registrations q ON q.appliance_id = each.value AND q.state = 'recording'
     JOIN runs r ON r.job_id = q.job_id
     LEFT JOIN registration_gaps g ON g.run_id = r.id
     WHERE g.run_id IS NULL OR (g.is_sealed = 0 AND g.counted_at < ?)
     ORDER BY each.key`,
  )
    .pluck()
    .all(JSON.stringify(applianceIds), agedBefore(now)) as string[];
}

function agedBefore(now: string): string {
  return new Date(Date.parse(now) - UNSEALED_FRESH_MIN * 60_000).toISOString();
}

/** A cache: written past the change log, which knows only the truth. */
export function keepGapCount(
  raw: Database,
  row: { readonly runId: string; readonly isSealed: boolean; readonly gapCount: number; readonly countedAt: string },
): void {
  rawStatement(
    raw,
    `INSERT INTO registration_gaps (run_id, is_sealed, gap_count, counted_at) VALUES (?, ?, ?, ?)
     ON CONFLICT DO UPDATE SET is_sealed = excluded.is_sealed, gap_count = excluded.gap_count, counted_at = excluded.counted_at`,
  ).run(row.runId, row.isSealed ? 1 : 0, row.gapCount, row.countedAt);
}

/** null: nobody has counted them. */
export function findGapCount(raw: Database, runId: string): number | null {
  return (
    (rawStatement(raw, 'SELECT gap_count FROM registration_gaps WHERE run_id = ?').pluck().get(runId) as
      | number
      | undefined) ?? null
  );
}
