/** Reads a run whole, as the plain record that the domain judges, walks and prints. */
import { and, asc, eq, isNull, sql } from 'drizzle-orm';
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
import { AS_STORED, countOpenMakeSafes, listTuningStages, type ReadingRow, type RunRow } from './runs.ts';
import {
  attachmentLinks,
  attachments,
  firingPointMarks,
  fittedParts,
  type jobs,
  readings,
  runAnswers,
  runHolds,
  runLockouts,
  runTunings,
  signOffs,
  transcriptions,
} from './schema/index.ts';
import { findGasSupply, findSite, listEmitters } from './sites.ts';

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
