/** What a packet is made from, and what it still lacks: the sealed record, or a draft of it as things stand. */
import { randomBytes } from 'node:crypto';
import { listApplianceDates } from '../../db/appliances.ts';
import { findAttachment } from '../../db/attachments.ts';
import { findDayHeadBefore } from '../../db/dayHeads.ts';
import type { ReadableDb } from '../../db/openStore.ts';
import { findCompany, findStaff, listLicencesOf } from '../../db/people.ts';
import { findLastVisitOfJob, findRegistration } from '../../db/registrations.ts';
import { findLastSeal, listDisclosures } from '../../db/seals.ts';
import { findVisit, listFinishedServices } from '../../db/visits.ts';
import type { KnownDate } from '../../domain/coverage/knownDate.ts';
import { registrationDeadline } from '../../domain/coverage/registrationDeadline.ts';
import type { PacketGap } from '../contract/registrations.ts';
import { packetGaps } from '../documents/packet/packetGaps.ts';
import type { PacketFacts, PacketPhoto, ServiceProof } from '../documents/packet/packetInput.ts';
import { buildDraftRecord } from '../sealing/buildSealedRecord.ts';
import { readSealedRecord } from '../sealing/chainProblems.ts';
import { notFound } from './handler.ts';
import { readRecordInput } from './recordInput.ts';
import { loadRun, type RunState, readRunState } from './runState.ts';
import { dayIn } from './today.ts';

export type PacketState = {
  readonly state: RunState;
  readonly facts: PacketFacts;
  readonly gaps: readonly PacketGap[];
};

/** Reads a file by its hash; null when it is missing or no longer what it was. */
export type ReadFile = (sha256: string) => Uint8Array | null;

export function readPacketState(db: ReadableDb, runId: string, now: string, readFile: ReadFile): PacketState {
  const { state, visitId } = stateOfRun(db, runId, now);
  const facts = {
    ...recordOf(db, state, visitId, now),
    photos: photosOf(db, state, readFile),
    registration: registrationOf(db, state, now),
    services: listServiceProofs(db, state.job.applianceId),
  };
  return { state, facts, gaps: packetGaps(facts, state.progress.gates.registration) };
}

/** What is missing, without reading the photos' bytes. */
export function listPacketGaps(db: ReadableDb, runId: string, now: string): readonly PacketGap[] {
  const nothingRead: ReadFile = () => new Uint8Array();
  return readPacketState(db, runId, now, nothingRead).gaps;
}

function stateOfRun(
  db: ReadableDb,
  runId: string,
  now: string,
): { readonly state: RunState; readonly visitId: string } {
  const { job } = loadRun(db, runId);
  const visit = findLastVisitOfJob(db, job.id) ?? notFound('visits', job.id);
  return { state: readRunState(db, runId, visit.id, now), visitId: visit.id };
}

/** A sealed run speaks through its seal alone; before that, through a draft of what would be sealed now. */
function recordOf(
  db: ReadableDb,
  state: RunState,
  visitId: string,
  now: string,
): Pick<PacketFacts, 'record' | 'disclosures' | 'dayHead'> {
  const seal = findLastSeal(db, state.run.id);
  if (seal === undefined) {
    const visit = findVisit(db, visitId) ?? notFound('visits', visitId);
    return buildDraftRecord(readRecordInput(db, state, visit, now), () => randomBytes(16).toString('hex'));
  }
  const read = readSealedRecord(seal.canonical);
  if (!read.ok) throw new Error(`seal ${seal.id} does not read: ${read.problem.code}`);
  const disclosures = listDisclosures(db, seal.id).map(({ path, salt, value, partyId }) => ({
    path,
    salt,
    value,
    partyId,
  }));
  const dayHead = findDayHeadBefore(db, seal.sealedAt.slice(0, 10));
  return { record: read.record, disclosures, ...(dayHead === undefined ? {} : { dayHead }) };
}

function photosOf(db: ReadableDb, state: RunState, readFile: ReadFile): readonly PacketPhoto[] {
  return [...takenPhotos(db, state, readFile), ...drawnSignatures(state, readFile)];
}

function drawnSignatures(state: RunState, readFile: ReadFile): readonly PacketPhoto[] {
  return state.record.signOffs.flatMap(({ signatureSha256 }) => {
    const bytes = signatureSha256 === undefined ? null : readFile(signatureSha256);
    return signatureSha256 === undefined || bytes === null
      ? []
      : [{ sha256: signatureSha256, mediaType: 'image/png', fileName: 'signature.png', bytes }];
  });
}

function takenPhotos(db: ReadableDb, state: RunState, readFile: ReadFile): readonly PacketPhoto[] {
  const bySha = new Map(state.record.photos.map((photo) => [photo.sha256, photo]));
  return [...bySha.values()].flatMap(({ sha256, attachmentId, copySha256 }) => {
    const row = findAttachment(db, attachmentId);
    const bytes = readFile(sha256);
    const copyBytes = copySha256 === undefined ? null : readFile(copySha256);
    return row === undefined || bytes === null
      ? []
      : [
          {
            sha256,
            mediaType: row.mediaType,
            fileName: row.fileName,
            bytes,
            ...(copyBytes === null ? {} : { copyBytes }),
          },
        ];
  });
}

function registrationOf(db: ReadableDb, state: RunState, now: string): PacketFacts['registration'] {
  const row = findRegistration(db, state.job.applianceId);
  return {
    by: (row?.by ?? null) as PacketFacts['registration']['by'],
    ownerConsentOn: row?.ownerConsentOn ?? null,
    deadline: registrationDeadline({
      cover: state.sheet.cover,
      dates: listApplianceDates(db, state.job.applianceId) as readonly KnownDate[],
      today: dayIn(state.record.site.timeZone, now),
    }),
    submittedOn: row?.submittedOn ?? null,
    confirmedOn: row?.confirmedOn ?? null,
    number: row?.number ?? null,
  };
}

/** Each finished service since, as proof year by year. */
export function listServiceProofs(
  db: ReadableDb,
  applianceId: string,
): readonly (ServiceProof & { readonly note: string | null })[] {
  const firm = findCompany(db)?.name ?? '';
  return listFinishedServices(db, applianceId).map((row) => {
    const seal = row.runId === null ? undefined : findLastSeal(db, row.runId);
    const licences = seal === undefined ? [] : listLicencesOf(db, seal.sealedById);
    return {
      on: row.plannedOn,
      firm,
      personName: seal === undefined ? null : (findStaff(db, seal.sealedById)?.name ?? null),
      licenceNumber:
        licences.find((licence) => licence.validFrom <= row.plannedOn && row.plannedOn <= licence.validTo)?.number ??
        null,
      recordSha256: seal?.sha256 ?? null,
      invoiceNumber: row.invoiceNumber,
      note: row.note,
    };
  });
}
