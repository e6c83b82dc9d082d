/** The record as the pages ask for it: values revealed, and who, what and which finding found by id. */
import type { Verdict } from '../../../domain/judgement/finding.ts';
import type { UnitSystem } from '../../../domain/quantity/preferredUnit.ts';
import { canonicalJson, sealHash } from '../../sealing/canonicalJson.ts';
import { type Revealed, revealRecord } from '../../sealing/revealRecord.ts';
import { type AnyRecord, isSealed } from '../../sealing/sealedRecord.ts';
import type { PacketInput } from './packetInput.ts';

export type OpenRecord = Revealed<AnyRecord>;
export type OpenReading = OpenRecord['run']['readings'][number];
export type OpenFinding = OpenRecord['findings'][number];
export type OpenAnswer = OpenRecord['run']['answers'][number];
export type SheetItem = OpenRecord['sheet']['steps'][number]['items'][number];
export type SheetStep = OpenRecord['sheet']['steps'][number];

export type PacketView = {
  readonly input: PacketInput;
  readonly record: OpenRecord;
  readonly isSealed: boolean;
  readonly isDraft: boolean;
  readonly sealedAt: string | null;
  readonly sha256: string;
  readonly unitSystems: readonly UnitSystem[];
  readonly timeZone: string;
  readonly visitOn: string;
  readonly nameOf: (staffId: string) => string;
  readonly instrumentLabel: (instrumentId: string | null) => string | null;
  readonly itemOf: (itemKey: string) => SheetItem | undefined;
  /** Readings that count: replaced ones are in the record, and shown as replaced. */
  readonly current: readonly OpenReading[];
  readonly findingsOf: (readingId: string) => readonly OpenFinding[];
  /** The one a reading is shown with: the hardest verdict, the sheet's own limit before others, the tighter before the wider. */
  readonly leadingFinding: (readingId: string) => OpenFinding | null;
};

/** From what needs acting on first to what only informs. */
export const HARDEST_FIRST: readonly Verdict[] = [
  'stop',
  'outside',
  'cannot-tell-apart',
  'cannot-judge',
  'near-the-edge',
  'within',
  'no-limit-on-sheet',
];

export function packetView(input: PacketInput): PacketView {
  const record = revealRecord(input.record, input.disclosures);
  const sealed = isSealed(input.record);
  const names = new Map(record.people.map((person) => [person.staffId, person.name]));
  const instruments = new Map(record.run.instruments.map((one) => [one.instrumentId, one.label]));
  const items = new Map(record.sheet.steps.flatMap((step) => step.items.map((item) => [item.key, item] as const)));
  const findings = Map.groupBy(record.findings, (finding) => finding.readingId ?? '');
  const findingsOf = (readingId: string): readonly OpenFinding[] => findings.get(readingId) ?? [];
  const other: UnitSystem = record.unitSystem === 'us' ? 'metric' : 'us';
  return {
    input,
    record,
    isSealed: sealed,
    isDraft: input.isDraft || !sealed,
    sealedAt: record.schema === 'lightoff.record/1' ? record.seal.sealedAt : null,
    sha256: sealHash(canonicalJson(input.record)),
    unitSystems: input.showsBothUnits ? [record.unitSystem, other] : [record.unitSystem],
    timeZone: record.site.timeZone,
    visitOn: record.visit.on,
    nameOf: (staffId) => names.get(staffId) ?? 'somebody not named in the crew',
    instrumentLabel: (instrumentId) => (instrumentId === null ? null : (instruments.get(instrumentId) ?? null)),
    itemOf: (itemKey) => items.get(itemKey),
    current: record.run.readings.filter((reading) => reading.supersededById === null),
    findingsOf,
    leadingFinding: (readingId) => findingsOf(readingId).toSorted(byWeight)[0] ?? null,
  };
}

/** Each sample has findings of its own: of those that say the same of the same thing the last one is enough to read or count. */
export function lastOfEach(findings: readonly OpenFinding[]): readonly OpenFinding[] {
  const key = (one: OpenFinding) => JSON.stringify([one.subject, one.verdict, one.proof, one.basis.limit]);
  return [...new Map(findings.map((finding) => [key(finding), finding])).values()];
}

/** Everything but what is within its limit, or has none, and is proven. */
export function needsAttention(finding: OpenFinding): boolean {
  const isQuiet = finding.verdict === 'within' || finding.verdict === 'no-limit-on-sheet';
  return !isQuiet || (!finding.proof.proven && finding.verdict !== 'no-limit-on-sheet');
}

function byWeight(a: OpenFinding, b: OpenFinding): number {
  const rank = (finding: OpenFinding): number => HARDEST_FIRST.indexOf(finding.verdict);
  const origin = (finding: OpenFinding): number => (finding.basis.from === 'sheet' ? 0 : 1);
  const width = (finding: OpenFinding): number => Number(finding.basis.limit?.max ?? Number.POSITIVE_INFINITY);
  return rank(a) - rank(b) || origin(a) - origin(b) || Math.sign(width(a) - width(b)) || 0;
}
