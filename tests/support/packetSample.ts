/** Packet inputs built on the recorded sample: final with and without gaps, draft, and one with a stop. */
import type { PacketInput, PacketPhoto } from '../../electron/documents/packet/packetInput.ts';
import { buildDraftRecord, buildSealedRecord } from '../../electron/sealing/buildSealedRecord.ts';
import type { RecordInput } from '../../electron/sealing/sealInput.ts';
import {
  minutesIn,
  sampleFindings,
  samplePhotos,
  sampleRecordInput,
  sampleSalts,
  sampleSeal,
  sampleStop,
} from './recordSample.ts';

export function packetPhotos(): readonly PacketPhoto[] {
  return samplePhotos().map(({ sha256, mediaType, fileName, bytes }) => ({ sha256, mediaType, fileName, bytes }));
}

export function samplePacket(
  changes: Partial<PacketInput> = {},
  recordChanges: Partial<RecordInput> = {},
): PacketInput {
  const built = buildSealedRecord({ ...sampleRecordInput(recordChanges), seal: sampleSeal() }, sampleSalts());
  return {
    record: built.record,
    disclosures: built.disclosures,
    photos: packetPhotos(),
    registration: {
      by: 'office',
      ownerConsentOn: '2026-04-14',
      deadline: {
        dueOn: '2026-06-13',
        weekday: 6,
        daysLeft: 60,
        countedFrom: 'started',
        countedFromOn: '2026-04-14',
        window: { days: 60 },
        isAssumed: false,
      },
      submittedOn: null,
      confirmedOn: null,
      number: null,
    },
    services: [],
    gaps: [],
    isDraft: false,
    gapReason: null,
    madeAt: minutesIn(240),
    showsBothUnits: true,
    ...changes,
  };
}

/** Not sealed yet, with a stop and with things missing. */
export function sampleDraft(changes: Partial<PacketInput> = {}): PacketInput {
  const input = sampleRecordInput({ findings: [...sampleFindings(), sampleStop()] });
  const built = buildDraftRecord(input, sampleSalts());
  return samplePacket({
    record: built.record,
    disclosures: built.disclosures,
    isDraft: true,
    gaps: [
      { code: 'not-sealed', where: 'visit', stepKey: null, itemKey: null, detail: null },
      { code: 'date-missing', where: 'appliance', stepKey: null, itemKey: null, detail: 'title-transfer' },
      { code: 'photo-missing', where: 'visit', stepKey: null, itemKey: null, detail: 'vent termination' },
    ],
    ...changes,
  });
}
