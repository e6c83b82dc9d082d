/** All other readings by subject, in one unit system or both, with limit, verdict and proof; then what was worked out from them. */
import { typedWithUnit } from '../../../../domain/quantity/typedWithUnit.ts';
import { momentText } from '../../documentDates.ts';
import type { Block, Cell, Column } from '../../page/blocks.ts';
import { limitCell, verdictCell } from '../findingCells.ts';
import type { OpenReading, PacketView } from '../packetView.ts';
import { proofText, readingLabel } from '../packetWords.ts';
import { hasOtherUnit, valueText } from '../quantityText.ts';
import { isAtFiringPoint } from './combustionSection.ts';
import { computedSection } from './computedSection.ts';
import { READING_GROUPS, readingGroup } from './readingGroups.ts';

export function readingsSection(view: PacketView): readonly Block[] {
  const others = view.current.filter((reading) => !isAtFiringPoint(reading, view));
  const groups = Map.groupBy(others, (reading) => readingGroup(reading.quantity));
  const blocks = READING_GROUPS.flatMap((group): readonly Block[] => {
    const readings = groups.get(group) ?? [];
    return readings.length === 0 ? [] : [{ kind: 'heading', level: 3, text: group }, readingTable(view, readings)];
  });
  return [
    ...(blocks.length === 0 ? [] : [{ kind: 'heading', level: 2, text: 'Readings' } as const, ...blocks]),
    ...computedSection(view),
    ...replacedBlocks(view),
  ];
}

function readingTable(view: PacketView, readings: readonly OpenReading[]): Block {
  const showsOther = view.unitSystems.length > 1 && readings.some((reading) => hasOtherUnit(reading.quantity));
  const columns: Column[] = [
    { header: 'Reading', share: 2.1 },
    { header: 'Value', width: 40, align: 'decimal' },
    { header: 'Unit', width: 32 },
    ...(showsOther ? [{ header: 'Value', width: 38, align: 'decimal' } as const, { header: 'Unit', width: 34 }] : []),
    { header: 'Limit', share: 1.9 },
    { header: 'Verdict', share: 1.35 },
  ];
  return {
    kind: 'table',
    hasRowHeaders: true,
    columns,
    rows: readings.map((one) => readingRow(view, one, showsOther)),
  };
}

function readingRow(view: PacketView, reading: OpenReading, showsOther: boolean): readonly Cell[] {
  const label = readingLabel(reading.quantity, reading.point, view.record.sheet.firingPoints);
  const instrument = view.instrumentLabel(reading.instrumentId);
  const when = momentText(reading.measuredAt, view.timeZone, view.visitOn);
  const origin = reading.origin === 'transcribed' ? 'from paper' : null;
  const name: Cell = { text: label, small: [when, instrument, origin].filter((part) => part !== null).join(', ') };
  const finding = view.leadingFinding(reading.readingId);
  const limit: Cell = finding ? limitCell(finding, view) : { text: '' };
  if (reading.valueOwn === null) {
    return [
      { text: label, small: `${when}; because: ${reading.notMeasuredReason ?? 'no reason given'}` },
      { text: '–', tone: 'muted' },
      { text: '' },
      ...(showsOther ? [{ text: '' }, { text: '' }] : []),
      { text: '' },
      { text: 'not measured' },
    ];
  }
  const [own = 'metric', other = 'metric'] = view.unitSystems;
  const mark = reading.comparator === '=' ? '' : `${reading.comparator} `;
  const value = valueText(reading.quantity, reading.valueOwn, own);
  const second = hasOtherUnit(reading.quantity) ? valueText(reading.quantity, reading.valueOwn, other) : null;
  return [
    name,
    { text: `${mark}${value.text}` },
    { text: value.unit, tone: 'muted' },
    ...(showsOther
      ? [{ text: second ? `${mark}${second.text}` : '' }, { text: second?.unit ?? '', tone: 'muted' as const }]
      : []),
    limit,
    finding
      ? { ...verdictCell(finding), small: finding.proof.proven ? null : proofText(finding.proof) }
      : { text: 'not judged', tone: 'muted' },
  ];
}

/** A reading that was put right stays on record beside what replaced it. */
function replacedBlocks(view: PacketView): readonly Block[] {
  const { readings } = view.record.run;
  const replaced = readings.filter((reading) => reading.supersededById !== null);
  if (replaced.length === 0) return [];
  const typed = (reading: OpenReading) => typedWithUnit(reading.typedText, reading.typedUnit);
  return [
    { kind: 'heading', level: 3, text: 'Readings that were replaced' },
    {
      kind: 'table',
      hasRowHeaders: true,
      columns: [
        { header: 'Reading', share: 2 },
        { header: 'First typed', share: 1 },
        { header: 'By, at', share: 1.4 },
        { header: 'Replaced by', share: 1 },
        { header: 'At', share: 0.7 },
      ],
      rows: replaced.map((reading): Cell[] => {
        const by = readings.find((one) => one.readingId === reading.supersededById);
        return [
          { text: readingLabel(reading.quantity, reading.point, view.record.sheet.firingPoints) },
          { text: typed(reading) },
          { text: `${view.nameOf(reading.typedById)}, ${momentText(reading.measuredAt, view.timeZone, view.visitOn)}` },
          { text: by ? typed(by) : '–' },
          { text: by ? momentText(by.measuredAt, view.timeZone, view.visitOn) : '' },
        ];
      }),
    },
  ];
}
