/** What earlier runs read on one appliance, as a later visit is held against it. */
import { and, asc, eq, inArray, isNotNull, isNull, lt } from 'drizzle-orm';
import { dayAt } from '../domain/coverage/dayAt.ts';
import type { FuelKey, ModelSheet } from '../domain/procedure/modelSheet.ts';
import type { RecordedReading } from '../domain/procedure/runRecord.ts';
import type { QuantityKey } from '../domain/quantity/quantities.ts';
import { isQuantityKey } from '../domain/quantity/quantities.ts';
import type { PastReading, PastRun } from '../domain/trend/pastRun.ts';
import { plusMinusOfInstrument } from '../domain/trend/plusMinusOfInstrument.ts';
import type { ReadableDb } from './openStore.ts';
import { listInstruments } from './people.ts';
import { fittedParts, jobs, readings, runs } from './schema/index.ts';
import { getRevisionById } from './sheets.ts';

/** Oldest first. Without `before`: all there are. */
export function listPastRuns(
  db: ReadableDb,
  applianceId: string,
  timeZone: string,
  before: string | null,
): readonly PastRun[] {
  const earlier = db
    .select({ run: runs, kind: jobs.kind })
    .from(runs)
    .innerJoin(jobs, eq(jobs.id, runs.jobId))
    .where(and(eq(jobs.applianceId, applianceId), before === null ? undefined : lt(runs.startedAt, before)))
    .orderBy(asc(runs.startedAt))
    .all();
  if (earlier.length === 0) return [];
  const instruments = new Map(listInstruments(db).map((row) => [row.id, row.accuracy as Accuracy]));
  const read = Map.groupBy(
    db
      .select()
      .from(readings)
      .where(
        and(
          inArray(
            readings.runId,
            earlier.map(({ run }) => run.id),
          ),
          isNull(readings.supersededById),
          isNotNull(readings.valueOwn),
        ),
      )
      .orderBy(asc(readings.measuredAt), asc(readings.sample))
      .all(),
    (row) => row.runId,
  );
  const newBaselines = runsWithNewBaseline(
    db,
    earlier.map(({ run }) => run),
  );
  return earlier.flatMap(({ run, kind }) => {
    const rows = read.get(run.id) ?? [];
    const [first] = rows;
    if (first === undefined) return [];
    return [
      {
        runId: run.id,
        visitId: first.visitId,
        kind: kind as PastRun['kind'],
        on: dayAt(timeZone, run.startedAt),
        fuel: run.fuel as FuelKey,
        startsBaseline: kind === 'startup' || newBaselines.has(run.id),
        readings: lastSamples(rows).flatMap((row) => toPastReading(row, instruments) ?? []),
      },
    ];
  });
}

/** By what each run's own sheet says of the parts that were changed on it. */
function runsWithNewBaseline(db: ReadableDb, earlier: readonly (typeof runs.$inferSelect)[]): ReadonlySet<string> {
  const changed = db
    .select({ runId: fittedParts.runId, partKey: fittedParts.partKey })
    .from(fittedParts)
    .where(
      and(
        inArray(
          fittedParts.runId,
          earlier.map((run) => run.id),
        ),
        isNull(fittedParts.removedAt),
      ),
    )
    .all();
  const sheetOf = new Map(earlier.map((run) => [run.id, run.sheetRevisionId]));
  return new Set(
    changed.flatMap(({ runId, partKey }) => {
      if (runId === null) return [];
      const sheet = getRevisionById(db, sheetOf.get(runId) ?? '').body as ModelSheet;
      return sheet.parts?.some((part) => part.key === partKey && part.newBaseline) === true ? [runId] : [];
    }),
  );
}

type ReadingRow = typeof readings.$inferSelect;
type Accuracy = Readonly<Record<string, { readonly abs: number; readonly relPct: number }>>;

/** Of the samples of one item the last one is the steady one. */
function lastSamples(rows: readonly ReadingRow[]): readonly ReadingRow[] {
  return [...new Map(rows.map((row) => [`${row.itemKey} ${row.quantity} ${row.point}`, row])).values()];
}

function toPastReading(row: ReadingRow, instruments: ReadonlyMap<string, Accuracy>): PastReading | null {
  const { id, itemKey, quantity, point, sample, valueOwn, comparator, instrumentId, measuredAt } = row;
  if (valueOwn === null || !isQuantityKey(quantity)) return null;
  return {
    readingId: id,
    itemKey,
    quantity: quantity satisfies QuantityKey,
    point,
    sample,
    valueOwn,
    comparator: comparator as RecordedReading['comparator'],
    instrumentId,
    plusMinus: plusMinusOfInstrument(valueOwn, instruments.get(instrumentId ?? '')?.[quantity]),
    measuredAt,
  };
}
