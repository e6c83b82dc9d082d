/** What the owner had better look at, worked out from the newest records. */
import { listRunsBegun } from '../../db/oversight.ts';
import { listStaff } from '../../db/people.ts';
import { readRunRecord } from '../../db/runRecord.ts';
import { getRevisionById } from '../../db/sheets.ts';
import { addDays } from '../../domain/coverage/period.ts';
import { oddRecords } from '../../domain/judgement/audit/oddRecords.ts';
import type { ModelSheet } from '../../domain/procedure/modelSheet.ts';
import type { Handlers } from './handler.ts';

/** Each record takes a few milliseconds to read, and nobody else is answered meanwhile. */
const MOST_RUNS = 60;

export const oversightHandlers: Handlers<'oversight.list'> = {
  'oversight.list': (input, context) => {
    // A return trip is another visit of the same run: once is enough, with the newest.
    const begun = [
      ...new Map(
        listRunsBegun(context.db, `${input.from}T00:00:00.000Z`, `${addDays(input.to, 1)}T00:00:00.000Z`)
          .toReversed()
          .map((row) => [row.run.id, row]),
      ).values(),
    ].toReversed();
    const looked = begun.slice(0, MOST_RUNS);
    const sheets = new Map<string, ModelSheet>();
    const sheetOf = (revisionId: string): ModelSheet => {
      const known = sheets.get(revisionId) ?? (getRevisionById(context.db, revisionId).body as ModelSheet);
      sheets.set(revisionId, known);
      return known;
    };
    const odd = oddRecords(
      looked.map(({ run, job, endedAt }) => ({
        runId: run.id,
        record: readRunRecord(context.db, run, job),
        sheet: sheetOf(run.sheetRevisionId),
        isOver: endedAt !== null,
      })),
    );
    const names = new Map(listStaff(context.db).map(({ id, name }) => [id, name]));
    const shown = new Set(odd.flatMap(({ runIds }) => runIds));
    return {
      odd: odd.map((one) => ({ ...one, name: names.get(one.staffId ?? '') ?? null })),
      visits: looked
        .filter(({ run }) => shown.has(run.id))
        .map(({ run, visitId, serial, customerName, street }) => ({
          runId: run.id,
          visitId,
          serial,
          customerName,
          street,
          startedAt: run.startedAt,
        })),
      leftOut: begun.length - looked.length,
    };
  },
};
