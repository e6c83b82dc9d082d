/** Which readiness answers of open startups have grown too old, by job: on the day of the visit once it is near, else today. */
import type { ReadableDb } from '../../db/openStore.ts';
import { findCompany } from '../../db/people.ts';
import { listReadiness } from '../../db/visits.ts';
import {
  type AgedAnswer,
  agedAnswers,
  type GivenAnswer,
  readinessJudgedOn,
} from '../../domain/procedure/agedReadiness.ts';
import { dayIn } from './today.ts';

/** `plannedOn` null: without a visit yet. */
export type AskedJob = { readonly jobId: string; readonly kind: string; readonly plannedOn: string | null };

export function agedReadinessOf(
  db: ReadableDb,
  jobs: readonly AskedJob[],
  today: string,
): ReadonlyMap<string, readonly AgedAnswer[]> {
  const startups = jobs.filter(({ kind }) => kind === 'startup');
  const timeZone = findCompany(db)?.timeZone ?? 'UTC';
  const rows = listReadiness(
    db,
    startups.map(({ jobId }) => jobId),
  );
  const given = Map.groupBy(rows, ({ answer }) => answer.jobId);
  return new Map(
    startups.map(({ jobId, plannedOn }) => [
      jobId,
      agedAnswers(
        (given.get(jobId) ?? []).map(({ answer }) => ({
          itemKey: answer.itemKey,
          answer: answer.answer as GivenAnswer['answer'],
          askedOn: dayIn(timeZone, answer.recordedAt),
        })),
        readinessJudgedOn(today, plannedOn),
      ),
    ]),
  );
}
