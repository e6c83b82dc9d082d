/** All other readings by subject, in one unit system or both, with limit, verdict and proof; then what was worked out from them. */
import { momentText } from '../../documentDates.ts';
import type { Block, Cell, Column } from '../../page/blocks.ts';
import { limitCell } from '../findingCells.ts';
import { inputsText } from '../inputsText.ts';
import type { OpenReading, PacketView } from '../packetView.ts';
import { pointText, proofText, readingLabel, VERDICT_WORDS } from '../packetWords.ts';
import { computedText, hasOtherUnit, spreadText, valueText } from '../quantityText.ts';
import { subjectWords } from '../subjectWords.ts';
import { isAtFiringPoint } from './combustionSection.ts';
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
    ...computedBlocks(view),
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
  const name: Cell = { text: label, small: instrument === null ? when : `${when}, ${instrument}` };
  const verdict = view.verdictOf(reading.readingId);
  const finding = view.findingsOf(reading.readingId).find((one) => one.verdict === verdict);
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
    verdict === null || !finding
      ? { text: 'not judged', tone: 'muted' }
      : {
          text: VERDICT_WORDS[verdict],
          verdict,
          tone: verdict === 'stop' ? 'stop' : 'plain',
          small: finding.proof.proven ? null : proofText(finding.proof),
        },
  ];
}

function computedBlocks(view: PacketView): readonly Block[] {
  const shown = lastOfEach(view);
  if (shown.length === 0) return [];
  return [
    { kind: 'heading', level: 2, text: 'Worked out from the readings' },
    {
      kind: 'table',
      hasRowHeaders: true,
      columns: [
        { header: 'Value', share: 1.7 },
        { header: 'Result', width: 46, align: 'decimal' },
        { header: 'Give or take', width: 40, align: 'right' },
        { header: 'Unit', width: 30 },
        { header: 'How, and from what', share: 3 },
      ],
      rows: shown.map(([name, value]) => computedRow(view, name, value)),
    },
  ];
}

type Computed = PacketView['record']['computed'][number];

/** Values are worked out for every sample: the last of each kind and point stands for the others, which the record has. */
function lastOfEach(view: PacketView): readonly (readonly [string, Computed])[] {
  const byName = new Map<string, Computed>();
  for (const value of view.record.computed) {
    // A wait is among the checks, step by step.
    if (view.itemOf(value.key) === undefined) byName.set(computedName(view, value), value);
  }
  return [...byName];
}

/** A label that is only the key again is made readable. */
function computedName(view: PacketView, value: Computed): string {
  if (value.label === value.key) {
    return subjectWords({ subject: value.key, formula: value.formula, point: value.point }, view);
  }
  const point = pointText(value.point, view.record.sheet.firingPoints);
  return point === null ? value.label : `${value.label}, ${point.toLowerCase()}`;
}

function computedRow(view: PacketView, name: string, value: Computed): readonly Cell[] {
  const [own = 'metric', other] = view.unitSystems;
  const decimals = Number(value.decimals);
  const inputs = [inputsText(value.inputs), value.source].filter(Boolean).join('; ');
  if (value.value === null) {
    const small = `can’t be worked out; missing: ${value.missing.join(', ')}`;
    return [{ text: name }, { text: '–' }, { text: '' }, { text: '' }, { text: value.formula, small }];
  }
  const system = computedText(value.value, value.unit, decimals, own) ? own : 'metric';
  const shown = computedText(value.value, value.unit, decimals, system) ?? { text: value.value, unit: value.unit };
  const second = other ? computedText(value.value, value.unit, decimals, other) : null;
  return [
    { text: name },
    { text: shown.text, small: second && second.unit !== shown.unit ? `${second.text}\u00a0${second.unit}` : null },
    { text: value.plusMinus === null ? '' : `± ${spreadText(value.plusMinus, value.unit, decimals, system)}` },
    { text: shown.unit, tone: 'muted' },
    { text: value.formula, small: inputs },
  ];
}

/** A reading that was put right stays on record beside what replaced it. */
function replacedBlocks(view: PacketView): readonly Block[] {
  const { readings } = view.record.run;
  const replaced = readings.filter((reading) => reading.supersededById !== null);
  if (replaced.length === 0) return [];
  const typed = (reading: OpenReading) => `${reading.typedText} ${reading.typedUnit}`.trim();
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
