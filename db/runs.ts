/** Queries over runs and what is recorded in them, piece by piece. */
import { and, asc, desc, eq, isNotNull, isNull, sql } from 'drizzle-orm';
import type { ReadableDb } from './openStore.ts';
import { preparedOnce } from './preparedOnce.ts';
import {
  attachmentLinks,
  fittedParts,
  jobs,
  makeSafes,
  readings,
  runAnswers,
  runHolds,
  runLockouts,
  runSteps,
  runs,
  runTunings,
  signOffs,
  transcriptions,
  tuningStages,
} from './schema/index.ts';

export type RunRow = typeof runs.$inferSelect;
export type ReadingRow = typeof readings.$inferSelect;

const runById = preparedOnce((db) =>
  db
    .select()
    .from(runs)
    .where(eq(runs.id, sql.placeholder('id')))
    .prepare(),
);

const jobById = preparedOnce((db) =>
  db
    .select()
    .from(jobs)
    .where(eq(jobs.id, sql.placeholder('id')))
    .prepare(),
);

/** Two queries by key: joined, the mapping of the nested rows takes twice as long, and every saved field asks for it. */
export function findRun(
  db: ReadableDb,
  runId: string,
): { readonly run: RunRow; readonly job: typeof jobs.$inferSelect } | undefined {
  const run = runById(db).get({ id: runId });
  const job = run === undefined ? undefined : jobById(db).get({ id: run.jobId });
  return run === undefined || job === undefined ? undefined : { run, job };
}

export function findRunOfJob(db: ReadableDb, jobId: string): RunRow | undefined {
  return db.select().from(runs).where(eq(runs.jobId, jobId)).get();
}

export function listOpenedSteps(db: ReadableDb, runId: string): readonly string[] {
  return db
    .select({ stepKey: runSteps.stepKey })
    .from(runSteps)
    .where(eq(runSteps.runId, runId))
    .orderBy(asc(runSteps.openedAt))
    .all()
    .map((row) => row.stepKey);
}

const openedStep = preparedOnce((db) =>
  db
    .select({ id: runSteps.id })
    .from(runSteps)
    .where(and(eq(runSteps.runId, sql.placeholder('runId')), eq(runSteps.stepKey, sql.placeholder('stepKey'))))
    .prepare(),
);

export function isStepOpened(db: ReadableDb, runId: string, stepKey: string): boolean {
  return openedStep(db).get({ runId, stepKey }) !== undefined;
}

const standingReading = preparedOnce((db) =>
  db
    .select({ id: readings.id })
    .from(readings)
    .where(
      and(
        eq(readings.runId, sql.placeholder('runId')),
        eq(readings.itemKey, sql.placeholder('itemKey')),
        eq(readings.quantity, sql.placeholder('quantity')),
        eq(readings.sample, sql.placeholder('sample')),
        isNull(readings.supersededById),
      ),
    )
    .prepare(),
);

/** The reading that stands for an item's quantity and sample now. */
export function findStandingReadingId(
  db: ReadableDb,
  where: { readonly runId: string; readonly itemKey: string; readonly quantity: string; readonly sample: number },
): string | undefined {
  return standingReading(db).get({
    runId: where.runId,
    itemKey: where.itemKey,
    quantity: where.quantity,
    sample: where.sample,
  })?.id;
}

export function findReading(db: ReadableDb, readingId: string): ReadingRow | undefined {
  return db.select().from(readings).where(eq(readings.id, readingId)).get();
}

/** Every answer of an item, oldest first: the last one counts. */
export function listAnswers(
  db: ReadableDb,
  runId: string,
  itemKey: string,
): readonly (typeof runAnswers.$inferSelect)[] {
  return db
    .select()
    .from(runAnswers)
    .where(and(eq(runAnswers.runId, runId), eq(runAnswers.itemKey, itemKey)))
    .orderBy(asc(runAnswers.at), AS_STORED)
    .all();
}

/** Of two rows of the same instant the one written later is the newer, whichever computer made its id. */
export const AS_STORED = sql`rowid`;

/** The newest hold of an item: earlier ones ended early or were not proven. */
export function findLatestHold(
  db: ReadableDb,
  runId: string,
  itemKey: string,
): typeof runHolds.$inferSelect | undefined {
  return db
    .select()
    .from(runHolds)
    .where(and(eq(runHolds.runId, runId), eq(runHolds.itemKey, itemKey)))
    .orderBy(desc(runHolds.startedAt), desc(AS_STORED))
    .get();
}

export function findRunningTuning(
  db: ReadableDb,
  runId: string,
  itemKey: string,
): typeof runTunings.$inferSelect | undefined {
  return db
    .select()
    .from(runTunings)
    .where(
      and(
        eq(runTunings.runId, runId),
        eq(runTunings.itemKey, itemKey),
        isNull(runTunings.finishedAt),
        isNull(runTunings.interruptedAt),
      ),
    )
    .orderBy(desc(runTunings.startedAt))
    .get();
}

export function listTuningStages(db: ReadableDb, tuningId: string): readonly (typeof tuningStages.$inferSelect)[] {
  return db
    .select()
    .from(tuningStages)
    .where(eq(tuningStages.tuningId, tuningId))
    .orderBy(asc(tuningStages.reachedAt))
    .all();
}

export function findSignOff(db: ReadableDb, runId: string, itemKey: string): typeof signOffs.$inferSelect | undefined {
  return db
    .select()
    .from(signOffs)
    .where(and(eq(signOffs.runId, runId), eq(signOffs.itemKey, itemKey)))
    .get();
}

export function findFittedPart(db: ReadableDb, id: string): typeof fittedParts.$inferSelect | undefined {
  return db.select().from(fittedParts).where(eq(fittedParts.id, id)).get();
}

export function findLockout(db: ReadableDb, id: string): typeof runLockouts.$inferSelect | undefined {
  return db.select().from(runLockouts).where(eq(runLockouts.id, id)).get();
}

export function findPhotoLink(
  db: ReadableDb,
  runId: string,
  itemKey: string,
  attachmentId: string,
): typeof attachmentLinks.$inferSelect | undefined {
  return db
    .select()
    .from(attachmentLinks)
    .where(
      and(
        eq(attachmentLinks.entity, 'runs'),
        eq(attachmentLinks.entityId, runId),
        eq(attachmentLinks.itemKey, itemKey),
        eq(attachmentLinks.attachmentId, attachmentId),
        isNull(attachmentLinks.removedAt),
      ),
    )
    .get();
}

export function countOpenMakeSafes(db: ReadableDb, applianceId: string): number {
  return db
    .select({ id: makeSafes.id })
    .from(makeSafes)
    .where(and(eq(makeSafes.applianceId, applianceId), isNull(makeSafes.closedAt)))
    .all().length;
}

/** When a licensed person last closed a make-safe on the appliance. */
export function findLastMakeSafeClosedAt(db: ReadableDb, applianceId: string): string | null {
  return (
    db
      .select({ closedAt: makeSafes.closedAt })
      .from(makeSafes)
      .where(and(eq(makeSafes.applianceId, applianceId), isNotNull(makeSafes.closedAt)))
      .orderBy(desc(makeSafes.closedAt))
      .get()?.closedAt ?? null
  );
}

export function findTranscription(db: ReadableDb, rowId: string): typeof transcriptions.$inferSelect | undefined {
  return db.select().from(transcriptions).where(eq(transcriptions.rowId, rowId)).get();
}
