/** What was worked out from the readings: side by side where it was for each firing point, else with formula and inputs. */
import { lowerBoundMark, resultUnit } from '../../../../domain/judgement/resultUnit.ts';
import type { Block, Cell, Column } from '../../page/blocks.ts';
import { inputsText } from '../inputsText.ts';
import type { PacketView } from '../packetView.ts';
import { meaningfulDecimals, type Result, resultTexts } from '../resultText.ts';
import { formulaWords, subjectWords } from '../subjectWords.ts';

type Computed = PacketView['record']['computed'][number];
type Points = PacketView['record']['sheet']['firingPoints'];

export function computedSection(view: PacketView): readonly Block[] {
  const values = view.record.computed.filter((value) => isShown(view, value));
  const { firingPoints } = view.record.sheet;
  const byPoint = Map.groupBy(
    values.filter((value) => firingPoints.some((point) => point.key === pointOf(value))),
    (value) => nameOf(view, value, null),
  );
  const pivoted = [...byPoint.values()].filter((group) => new Set(group.map(pointOf)).size > 1);
  const inPivot = new Set(pivoted.flat());
  const singles = lastOfEach(
    view,
    values.filter((value) => !inPivot.has(value)),
  );
  const points = firingPoints.filter((point) => pivoted.flat().some((value) => pointOf(value) === point.key));
  if (values.length === 0) return [];
  return [
    { kind: 'heading', level: 2, text: 'Worked out from the readings' },
    ...(pivoted.length === 0 ? [] : [pivotTable(view, pivoted, points)]),
    ...(singles.length === 0 ? [] : [singlesTable(view, singles)]),
  ];
}

/** A wait is among the checks, a slip among the findings, and a limit that was worked out beside its reading. */
function isShown(view: PacketView, value: Computed): boolean {
  const isElsewhere = view.itemOf(value.key) !== undefined || value.key.startsWith('mistake:');
  return !isElsewhere && (value.value !== null || value.missing.length > 0);
}

function pointOf(value: Computed): string | null {
  return /@([^#]*)$/u.exec(value.key)?.[1] ?? value.point;
}

/** Values are worked out for every sample: the last of each kind and point stands for the others, which the record has. */
function lastOfEach(view: PacketView, values: readonly Computed[]): readonly (readonly [string, Computed])[] {
  const ordered = values.toSorted((a, b) => sampleOf(a) - sampleOf(b));
  return [...new Map(ordered.map((value) => [nameOf(view, value, pointOf(value)), value] as const))];
}

function nameOf(view: PacketView, value: Computed, point: string | null): string {
  // A label that is only the key again is made readable.
  if (value.label === value.key) {
    const subject = point === null ? value.key.replace(/@.*$/u, '') : value.key;
    return subjectWords({ subject, formula: value.formula, point }, view);
  }
  const label = view.record.sheet.firingPoints.find((one) => one.key === point)?.label ?? null;
  return label === null ? value.label : `${value.label}, ${label.toLowerCase()}`;
}

function pivotTable(view: PacketView, groups: readonly (readonly Computed[])[], points: Points): Block {
  const columns: Column[] = [
    { header: 'Value', share: 1 },
    { header: 'Unit', width: 32 },
    ...points.map((point): Column => ({ header: point.label, width: 74, align: 'decimal' })),
  ];
  return {
    kind: 'table',
    hasRowHeaders: true,
    columns,
    rows: groups.map((group): Cell[] => {
      const decimals = decimalsOf(group);
      const [first] = group;
      const unit = first ? (shownResult(view, first, decimals)?.unit ?? first.unit) : '';
      return [
        { text: first ? nameOf(view, first, null) : '', small: first ? formulaWords(first.formula, view) : null },
        { text: unit, tone: 'muted' },
        ...points.map((point) => pivotCell(view, valueAt(group, point.key), decimals)),
      ];
    }),
  };
}

function valueAt(group: readonly Computed[], point: string): Computed | undefined {
  return group
    .filter((value) => pointOf(value) === point)
    .toSorted((a, b) => sampleOf(a) - sampleOf(b))
    .at(-1);
}

function pivotCell(view: PacketView, value: Computed | undefined, decimals: number): Cell {
  const shown = value ? shownResult(view, value, decimals) : null;
  if (!value || !shown) {
    return { text: '–', tone: 'muted', small: value ? `missing: ${value.missing.join(', ')}` : null };
  }
  const spread = shown.plusMinus === null ? null : `± ${shown.plusMinus}`;
  return { text: shown.text, small: [spread, shown.other].filter(Boolean).join('\n') };
}

function singlesTable(view: PacketView, values: readonly (readonly [string, Computed])[]): Block {
  return {
    kind: 'table',
    hasRowHeaders: true,
    columns: [
      { header: 'Value', share: 1.7 },
      { header: 'Result', width: 46, align: 'decimal' },
      { header: 'Give or take', width: 40, align: 'right' },
      { header: 'Unit', width: 30 },
      { header: 'How, and from what', share: 3 },
    ],
    rows: values.map(([name, value]): Cell[] => {
      const shown = shownResult(view, value, decimalsOf([value]));
      if (!shown) {
        const small = `can’t be worked out; missing: ${value.missing.join(', ')}`;
        return [
          { text: name },
          { text: '–' },
          { text: '' },
          { text: '' },
          { text: formulaWords(value.formula, view), small },
        ];
      }
      return [
        { text: name },
        { text: shown.text, small: shown.other },
        { text: shown.plusMinus === null ? '' : `± ${shown.plusMinus}` },
        { text: shown.unit, tone: 'muted' },
        {
          text: formulaWords(value.formula, view),
          small: [inputsText(value.inputs, view.record.sheet.firingPoints), value.source].filter(Boolean).join('; '),
        },
      ];
    }),
  };
}

/** In the first system of the packet, and where another one is wanted and differs, in that one too. */
function shownResult(view: PacketView, value: Computed, decimals: number) {
  if (value.value === null) return null;
  const result = resultOf(value, value.value);
  const [own = 'metric', other] = view.unitSystems;
  const first = resultTexts(result, own, decimals);
  const second = other ? resultTexts(result, other, decimals) : first;
  const mark = lowerBoundMark(value.inputs);
  return {
    ...first,
    text: `${mark}${first.text}`,
    other: second.unit === first.unit ? null : `${mark}${second.text}\u00a0${second.unit}`,
  };
}

function resultOf(value: Computed, number: string): Result {
  return { value: number, unit: resultUnit(value.key, value.unit), plusMinus: value.plusMinus };
}

/** One for all values of a row, so that they can be compared. */
function decimalsOf(values: readonly Computed[]): number {
  const each = values.flatMap((value) =>
    value.value === null ? [] : [meaningfulDecimals(resultOf(value, value.value), Number(value.decimals))],
  );
  return each.length === 0 ? 0 : Math.min(...each);
}

/** Which sample a value was worked out from: its inputs are named `coPpm@high#2`. */
function sampleOf(value: Computed): number {
  return Math.max(1, ...Object.keys(value.inputs).map((key) => Number(/#(\d+)/u.exec(key)?.[1] ?? 1)));
}
