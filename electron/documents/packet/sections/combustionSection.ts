/** The flue readings, firing point beside firing point, with every sample that was taken, and a picture of them. */
import { momentText } from '../../documentDates.ts';
import type { Block, Cell, Column } from '../../page/blocks.ts';
import { verdictCell } from '../findingCells.ts';
import { firingPointChart } from '../firingPointChart.ts';
import { lastSample } from '../lastSample.ts';
import type { OpenReading, PacketView } from '../packetView.ts';
import { proofText } from '../packetWords.ts';
import { hasOtherUnit, limitText, quantityLabel, valueText, withUnit } from '../quantityText.ts';

export const COMBUSTION = [
  'o2DryVolPct',
  'co2DryVolPct',
  'coPpm',
  'coAirFreePpm',
  'flueGasC',
  'intakeAirC',
  'supplyC',
  'returnC',
  'fanSpeedRpm',
  'burnerPowerPct',
] as const;
const SAMPLED = ['o2DryVolPct', 'co2DryVolPct', 'coPpm', 'flueGasC'] as const;

export function isAtFiringPoint(reading: OpenReading, view: PacketView): boolean {
  return (
    (COMBUSTION as readonly string[]).includes(reading.quantity) &&
    view.record.sheet.firingPoints.some((point) => point.key === reading.point)
  );
}

export function combustionSection(view: PacketView): readonly Block[] {
  const points = view.record.sheet.firingPoints.filter((point) =>
    view.current.some((one) => one.point === point.key && (COMBUSTION as readonly string[]).includes(one.quantity)),
  );
  if (points.length === 0) return [];
  const chart = firingPointChart(view, points);
  return [
    { kind: 'heading', level: 2, text: 'Combustion' },
    ...inThrees(points).map((some) => pivot(view, some)),
    ...(chart ? [{ kind: 'heading', level: 3, text: 'Across the firing points' } as const, chart] : []),
    { kind: 'heading', level: 3, text: 'Samples' },
    sampleTable(view, points),
  ];
}

type Points = PacketView['record']['sheet']['firingPoints'];

/** More than three points side by side would not fit the page. */
function inThrees(points: Points): readonly Points[] {
  return Array.from({ length: Math.ceil(points.length / 3) }, (_, index) => points.slice(index * 3, index * 3 + 3));
}

function pivot(view: PacketView, points: Points): Block {
  const quantities = COMBUSTION.filter((quantity) => points.some((point) => lastSample(view, quantity, point.key)));
  const columns: Column[] = [
    { header: 'Last sample', share: 1.1 },
    { header: '', width: 24 },
    ...points.flatMap((point): Column[] => [
      { header: point.label, width: 44, align: 'decimal' },
      { header: 'Verdict and limit', share: 1 },
    ]),
  ];
  return {
    kind: 'table',
    hasRowHeaders: true,
    columns,
    rows: quantities.map((quantity): Cell[] => [
      { text: quantityLabel(quantity) },
      { text: valueText(quantity, '0', view.record.unitSystem).unit, tone: 'muted' },
      ...points.flatMap((point) => pointCells(view, quantity, lastSample(view, quantity, point.key))),
    ]),
  };
}

function pointCells(view: PacketView, quantity: string, reading: OpenReading | undefined): readonly Cell[] {
  if (!reading || reading.valueOwn === null) return [{ text: '–', tone: 'muted' }, { text: '' }];
  const [own, other] = view.unitSystems;
  const value = valueText(quantity, reading.valueOwn, own ?? 'metric');
  const finding = view.leadingFinding(reading.readingId);
  const limit = finding?.basis.limit ? limitText(finding.basis.limit, view.record.unitSystem) : null;
  const proof = finding && !finding.proof.proven ? proofText(finding.proof) : null;
  return [
    {
      text: `${reading.comparator === '=' ? '' : `${reading.comparator} `}${value.text}`,
      small: other && hasOtherUnit(quantity) ? withUnit(valueText(quantity, reading.valueOwn, other)) : null,
    },
    finding
      ? { ...verdictCell(finding), small: [limit, proof].filter((part) => part !== null).join('; ') }
      : { text: '' },
  ];
}

/** When the burner came to this rate for the samples that followed. */
function reachedBefore(view: PacketView, point: string, firstAt: string | null): string | null {
  const marks = view.record.run.firingPoints.filter((one) => one.firingPoint === point);
  const before = marks.filter(({ reachedAt }) => firstAt !== null && reachedAt <= firstAt);
  return (before.at(-1) ?? marks.at(-1))?.reachedAt ?? null;
}

function stepTitle(view: PacketView, itemKey: string): string | null {
  return view.record.sheet.steps.find(({ items }) => items.some(({ key }) => key === itemKey))?.title ?? null;
}

function sampleTable(view: PacketView, points: Points): Block {
  const rows = points.flatMap((point): Cell[][] => {
    const sampled = view.current.filter(
      (one) => one.point === point.key && (SAMPLED as readonly string[]).includes(one.quantity),
    );
    // A service reads a firing point twice: as it was found, and as it is left.
    const series = [...Map.groupBy(sampled, (one) => one.itemKey)];
    return series.flatMap(([itemKey, readingsOfSeries]) => {
      const samples = [...Map.groupBy(readingsOfSeries, (one) => one.sample)];
      const ordered = samples.toSorted(([a], [b]) => Number(a) - Number(b));
      const reached = reachedBefore(view, point.key, ordered[0]?.[1][0]?.measuredAt ?? null);
      return ordered.map(([sample, readings], index): Cell[] => {
        const first = readings[0];
        return [
          {
            text: series.length > 1 ? (stepTitle(view, itemKey) ?? point.label) : point.label,
            small:
              index === 0 && reached !== null ? `reached ${momentText(reached, view.timeZone, view.visitOn)}` : null,
          },
          { text: sample },
          { text: first ? momentText(first.measuredAt, view.timeZone, view.visitOn) : '' },
          ...SAMPLED.map((quantity) =>
            sampleCell(
              view,
              readings.find((one) => one.quantity === quantity),
            ),
          ),
          {
            text: view.instrumentLabel(first?.instrumentId ?? null) ?? 'not named',
            small: first ? view.nameOf(first.measuredById) : null,
          },
        ];
      });
    });
  });
  const unit = (quantity: string) => valueText(quantity, '0', view.record.unitSystem).unit;
  return {
    kind: 'table',
    hasRowHeaders: true,
    columns: [
      { header: 'Firing point', share: 1.2 },
      { header: 'No.', width: 20, align: 'right' },
      { header: 'Time', width: 34 },
      ...SAMPLED.map((quantity): Column => {
        const label = quantity === 'coPpm' ? 'CO' : quantityLabel(quantity);
        return { header: `${label}, ${unit(quantity)}`, width: 52, align: 'decimal' };
      }),
      { header: 'Instrument, by', share: 1.6 },
    ],
    rows,
  };
}

function sampleCell(view: PacketView, reading: OpenReading | undefined): Cell {
  if (!reading) return { text: '–', tone: 'muted' };
  if (reading.valueOwn === null) return { text: 'not measured', tone: 'muted' };
  const mark = reading.comparator === '=' ? '' : `${reading.comparator} `;
  return { text: `${mark}${valueText(reading.quantity, reading.valueOwn, view.record.unitSystem).text}` };
}
