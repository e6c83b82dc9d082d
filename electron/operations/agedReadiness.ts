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

/** `2026-03-02T13:00` */
const MINUTE_LENGTH = 16;

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
  // A call goes through the whole list within minutes, and a board has hundreds of answers: each minute is looked up once.
  const days = new Map<string, string>();
  const dayOf = (instant: string): string => {
    const minute = instant.slice(0, MINUTE_LENGTH);
    const day = days.get(minute) ?? dayIn(timeZone, instant);
    days.set(minute, day);
    return day;
  };
  return new Map(
    startups.map(({ jobId, plannedOn }) => [
      jobId,
      agedAnswers(
        (given.get(jobId) ?? []).map(({ answer }) => ({
          itemKey: answer.itemKey,
          answer: answer.answer as GivenAnswer['answer'],
          askedOn: dayOf(answer.recordedAt),
        })),
        readinessJudgedOn(today, plannedOn),
      ),
    ]),
  );
}
