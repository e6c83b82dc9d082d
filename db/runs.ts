/** Reads a run whole, as the plain record that the domain judges, walks and prints. */
import { and, asc, desc, eq, isNotNull, isNull, sql } from 'drizzle-orm';
import { alias } from 'drizzle-orm/sqlite-core';
import { siteDay } from '../domain/judgement/proof/siteDay.ts';
import { type FuelSetUp, isConvertedTo } from '../domain/procedure/conversion.ts';
import type { EmitterKind, FuelKey } from '../domain/procedure/modelSheet.ts';
import type { RecordedInstrument, RunRecord, Transcription } from '../domain/procedure/runRecord.ts';
import type { QuantityKey } from '../domain/quantity/quantities.ts';
import { findAppliance, findFuelStateOn, listFuelStatePhotos } from './appliances.ts';
import { listOpenNotices } from './openNotices.ts';
import type { ReadableDb } from './openStore.ts';
import { listInstruments } from './people.ts';
import { findSiteIdOfJob } from './placements.ts';
import { preparedOnce } from './preparedOnce.ts';
import {
  attachmentLinks,
  attachments,
  firingPointMarks,
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
import { findGasSupply, findSite, listEmitters } from './sites.ts';

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

/** Of two rows of the same instant the one written later is the newer: ids made in one millisecond sort by chance. */
const AS_STORED = sql`rowid`;

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

/** `visitStartedAt`: of the visit it is read for; a return trip knows what was recorded of the appliance since the first. */
export function readRunRecord(
  db: ReadableDb,
  run: RunRow,
  job: typeof jobs.$inferSelect,
  visitStartedAt: string | null = null,
): RunRecord {
  const appliance = findAppliance(db, job.applianceId);
  if (appliance === undefined) throw new Error(`run ${run.id} has no appliance`);
  // Where its trip went: a boiler moved or taken out since takes none of its history along.
  const siteId = findSiteIdOfJob(db, job);
  const site = siteId === undefined ? undefined : findSite(db, siteId);
  if (site === undefined) throw new Error(`appliance ${appliance.id} never stood anywhere`);
  const on = siteDay(Date.parse(visitStartedAt ?? run.startedAt), site.timeZone);
  const supply = findGasSupply(db, site.id);
  const emitters = listEmitters(db, site.id);
  const transcribed = listTranscriptions(db, run.id);
  const tunings = db
    .select()
    .from(runTunings)
    .where(eq(runTunings.runId, run.id))
    .orderBy(asc(runTunings.startedAt))
    .all();
  return {
    runId: run.id,
    kind: job.kind as RunRecord['kind'],
    fuel: run.fuel as FuelKey,
    startedAt: run.startedAt,
    site: {
      altitudeM: site.altitudeM,
      systemHeightM: site.systemHeightM,
      systemVolumeL: site.systemVolumeL,
      emitters: emitters.map((row) => row.emitter as EmitterKind),
      zones: emitters.map(({ zone, ratedKw }) => ({ zone, ratedKw })),
      fuel: (supply?.fuel ?? null) as FuelKey | null,
      gasSupplyKind: (supply?.kind ?? null) as RunRecord['site']['gasSupplyKind'],
      meterCompensation: (supply?.compensation ?? null) as RunRecord['site']['meterCompensation'],
      heatingValueMjPerM3: supply?.heatingValueMjPerM3 ?? null,
      heatingValueSource: supply?.heatingValueSource ?? null,
      jurisdiction: site.jurisdiction,
      timeZone: site.timeZone,
      coldWaterC: site.coldWaterC,
    },
    appliance: {
      serial: appliance.serial,
      maker: appliance.maker,
      model: appliance.model,
      plateFuel: appliance.plateFuel as FuelKey | null,
      tagFuel: appliance.tagFuel as FuelKey | null,
      hasConversionRecord: isConvertedTo(run.fuel as FuelKey, readSetUp(db, appliance.id, on)),
      ratedInputKw: appliance.ratedInputKw,
      ratedInputBasis: appliance.ratedInputBasis as 'gross' | 'net',
      ventElbows: appliance.ventElbows,
    },
    // One taken out of use before the run began is not offered; what was read with it then keeps it.
    instruments: listInstruments(db)
      .filter(({ retiredOn }) => retiredOn === null || retiredOn >= run.startedAt.slice(0, 10))
      .map(toRecordedInstrument),
    answers: db
      .select()
      .from(runAnswers)
      .where(eq(runAnswers.runId, run.id))
      .orderBy(asc(runAnswers.at), AS_STORED)
      .all()
      .map(({ id, itemKey, stepKey, value, reason, instrumentId, byId, at }) => ({
        ...transcribed(id),
        itemKey,
        stepKey,
        value,
        reason,
        instrumentId,
        byId,
        at,
      })),
    readings: db
      .select()
      .from(readings)
      .where(eq(readings.runId, run.id))
      .orderBy(asc(readings.typedAt), AS_STORED)
      .all()
      .map(toRecordedReading),
    holds: db
      .select()
      .from(runHolds)
      .where(eq(runHolds.runId, run.id))
      .orderBy(asc(runHolds.startedAt), AS_STORED)
      .all()
      .map(({ id, itemKey, startedAt, requiredS, endedAt, hasClockJumped }) => ({
        ...transcribed(id),
        itemKey,
        startedAt,
        requiredS,
        endedAt,
        clockJumped: hasClockJumped,
      })),
    tunings: tunings.map((row) => ({
      ...transcribed(row.id),
      itemKey: row.itemKey,
      startedAt: row.startedAt,
      stages: listTuningStages(db, row.id).map(({ stageKey, reachedAt }) => ({ stageKey, reachedAt })),
      finishedAt: row.finishedAt,
      interruptedAt: row.interruptedAt,
      interruptedReason: row.interruptedReason,
    })),
    parts: db
      .select()
      .from(fittedParts)
      .where(and(eq(fittedParts.runId, run.id), isNull(fittedParts.removedAt)))
      .orderBy(asc(fittedParts.recordedAt), AS_STORED)
      .all()
      .map((row) => ({
        rowId: row.id,
        itemKey: row.itemKey ?? '',
        partKey: row.partKey ?? '',
        label: row.name,
        partNumber: row.partNumber,
        serial: row.serial,
        byId: row.recordedById ?? '',
        at: row.recordedAt ?? run.startedAt,
      })),
    lockouts: db
      .select()
      .from(runLockouts)
      .where(and(eq(runLockouts.runId, run.id), isNull(runLockouts.removedAt)))
      .orderBy(asc(runLockouts.happenedAt), AS_STORED)
      .all()
      .map(({ id, itemKey, happenedAt, code, outdoorTypedText, outdoorTypedUnit, outdoorC, byId, recordedAt }) => ({
        rowId: id,
        itemKey,
        happenedAt,
        code,
        outdoorTypedText,
        outdoorTypedUnit,
        outdoorC,
        byId,
        at: recordedAt,
      })),
    photos: db
      .select({ itemKey: attachmentLinks.itemKey, attachment: attachments, copySha256: copies.sha256 })
      .from(attachmentLinks)
      .innerJoin(attachments, eq(attachments.id, attachmentLinks.attachmentId))
      .leftJoin(copyLinks, and(eq(copyLinks.entity, 'attachments'), eq(copyLinks.entityId, attachments.id)))
      .leftJoin(copies, eq(copies.id, copyLinks.attachmentId))
      .where(
        and(
          eq(attachmentLinks.entity, 'runs'),
          eq(attachmentLinks.entityId, run.id),
          isNull(attachmentLinks.removedAt),
        ),
      )
      .orderBy(asc(attachmentLinks.id))
      .all()
      .map(({ itemKey, attachment, copySha256 }) => ({
        ...(copySha256 === null ? {} : { copySha256 }),
        itemKey: itemKey ?? '',
        attachmentId: attachment.id,
        sha256: attachment.sha256,
        takenAt: attachment.takenAt ?? attachment.addedAt,
      })),
    firingPoints: db
      .select()
      .from(firingPointMarks)
      .where(eq(firingPointMarks.runId, run.id))
      .orderBy(asc(firingPointMarks.reachedAt))
      .all()
      .map(({ id, firingPoint, reachedAt }) => ({ ...transcribed(id), firingPoint, reachedAt })),
    signOffs: db
      .select({ signOff: signOffs, signatureSha256: attachments.sha256 })
      .from(signOffs)
      .leftJoin(attachments, eq(attachments.id, signOffs.signatureAttachmentId))
      .where(eq(signOffs.runId, run.id))
      .all()
      .map(({ signOff: { id, itemKey, by, name, staffId, at }, signatureSha256 }) => ({
        ...transcribed(id),
        ...(signatureSha256 === null ? {} : { signatureSha256 }),
        itemKey,
        by: by as 'licensed' | 'occupant',
        name,
        staffId,
        at,
      })),
    openMakeSafes: countOpenMakeSafes(db, appliance.id),
    openNotices: listOpenNotices(db, appliance.id),
  };
}

function readSetUp(db: ReadableDb, applianceId: string, on: string): FuelSetUp | null {
  const state = findFuelStateOn(db, applianceId, on);
  if (state === undefined) return null;
  const { fuel, conversionKit, orifice } = state;
  return { fuel: fuel as FuelKey, conversionKit, orifice, photoCount: listFuelStatePhotos(db, state.id).length };
}

/** A photo's copy without place hangs on the photo itself: that way round there is an index. */
const copyLinks = alias(attachmentLinks, 'copy_links');
const copies = alias(attachments, 'copies');

/** Answers what belongs beside a row that was copied from paper, and nothing beside any other. */
function listTranscriptions(
  db: ReadableDb,
  runId: string,
): (rowId: string) => { readonly transcribed?: Transcription } {
  const rows = transcriptionsOfRun(db).all({ runId });
  const byRow = new Map(rows.map(({ rowId, typedById, typedAt }) => [rowId, { typedById, typedAt }]));
  return (rowId) => {
    const found = byRow.get(rowId);
    return found === undefined ? {} : { transcribed: found };
  };
}

export function findTranscription(db: ReadableDb, rowId: string): typeof transcriptions.$inferSelect | undefined {
  return db.select().from(transcriptions).where(eq(transcriptions.rowId, rowId)).get();
}

const transcriptionsOfRun = preparedOnce((db) =>
  db
    .select()
    .from(transcriptions)
    .where(eq(transcriptions.runId, sql.placeholder('runId')))
    .prepare(),
);

function toRecordedReading(row: ReadingRow): RunRecord['readings'][number] {
  const { id, runId: _runId, typedAt: _typedAt, quantity, comparator, origin, ...rest } = row;
  return {
    ...rest,
    readingId: id,
    quantity: quantity as QuantityKey,
    comparator: comparator as '=' | '>' | '<',
    origin: origin as RunRecord['readings'][number]['origin'],
  };
}

function toRecordedInstrument(row: ReturnType<typeof listInstruments>[number]): RecordedInstrument {
  return {
    instrumentId: row.id,
    label: row.label,
    serial: row.serial,
    kind: row.kind as RecordedInstrument['kind'],
    calibrations: row.calibrations.map(({ calibratedOn, dueOn, certificate }) => ({
      calibratedOn,
      dueOn,
      certificate,
    })),
    accuracy: row.accuracy as RecordedInstrument['accuracy'],
    rangeMax: row.rangeMax as RecordedInstrument['rangeMax'],
  };
}
