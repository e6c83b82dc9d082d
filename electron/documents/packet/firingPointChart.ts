/** Readings across the firing points as a drawing: values joined, the allowed range of each as a bar behind it. */
import { formatNumber } from '../../../domain/quantity/formatQuantity.ts';
import { preferredUnit } from '../../../domain/quantity/preferredUnit.ts';
import { isQuantityKey } from '../../../domain/quantity/quantities.ts';
import { fromDecimalText } from '../../sealing/decimalText.ts';
import { COLOURS } from '../documentColours.ts';
import type { FigureBlock } from '../page/blocks.ts';
import type { DrawOp } from '../page/pageModel.ts';
import { SMALL, type TextStyle, textLine } from '../page/textStyle.ts';
import { circle, round } from '../page/verdictShape.ts';
import { textWidth } from '../textMeasure.ts';
import { lastSample } from './lastSample.ts';
import type { PacketView } from './packetView.ts';
import { quantityLabel, valueText, withUnit } from './quantityText.ts';

type Points = PacketView['record']['sheet']['firingPoints'];
type Mark = 'round' | 'square';
type Value = {
  readonly value: number;
  readonly min: number | null;
  readonly max: number | null;
  readonly text: string;
};
type Series = { readonly label: string; readonly mark: Mark; readonly values: readonly (Value | null)[] };
type Panel = { readonly title: string; readonly series: readonly Series[] };

const HEIGHT = 158;
const PANEL_GAP = 22;
const PLOT = { left: 26, top: 30, bottom: 18 } as const;

/** Null where fewer than two points have a value: a line of one point says nothing. */
export function firingPointChart(view: PacketView, pointsAsWalked: Points): FigureBlock | null {
  // The burner's rate rises to the right, whatever order the sheet walks the points in.
  const points = pointsAsWalked[0]?.key === 'high' ? pointsAsWalked.toReversed() : pointsAsWalked;
  const panels = [
    panel('O₂ and CO₂', view, points, [
      ['o2DryVolPct', 'round'],
      ['co2DryVolPct', 'square'],
    ]),
    panel('CO as measured', view, points, [['coPpm', 'round']]),
    panel('Flue gas and return water', view, points, [
      ['flueGasC', 'round'],
      ['returnC', 'square'],
    ]),
  ].filter((one) => one !== null);
  if (panels.length === 0) return null;
  return {
    kind: 'figure',
    height: HEIGHT,
    alt: altText(panels, points),
    draw: (x, y, width) => {
      const panelWidth = (width - PANEL_GAP * 2) / 3;
      return panels.flatMap((one, index) =>
        drawPanel(one, points, x + index * (panelWidth + PANEL_GAP), y, panelWidth),
      );
    },
  };
}

function panel(
  title: string,
  view: PacketView,
  points: Points,
  quantities: readonly (readonly [string, Mark])[],
): Panel | null {
  const series = quantities
    .map(
      ([quantity, mark]): Series => ({
        label: quantityLabel(quantity),
        mark,
        values: points.map((point) => valueAt(view, quantity, point.key)),
      }),
    )
    .filter((one) => one.values.filter((value) => value !== null).length >= 2);
  if (series.length === 0) return null;
  const unit = valueText(quantities[0]?.[0] ?? '', '0', view.record.unitSystem).unit;
  return { title: `${title}, ${unit}`, series };
}

function valueAt(view: PacketView, quantity: string, point: string): Value | null {
  const reading = lastSample(view, quantity, point);
  if (!reading || reading.valueOwn === null || !isQuantityKey(quantity)) return null;
  const unit = preferredUnit(quantity, view.record.unitSystem);
  const shown = (own: string | null) => (own === null ? null : unit.fromOwn(fromDecimalText(own)));
  const limit = view.findingsOf(reading.readingId).find((one) => one.basis.limit?.quantity === quantity)?.basis.limit;
  return {
    value: unit.fromOwn(fromDecimalText(reading.valueOwn)),
    min: shown(limit?.min ?? null),
    max: shown(limit?.max ?? null),
    text: withUnit(valueText(quantity, reading.valueOwn, view.record.unitSystem)),
  };
}

function drawPanel(one: Panel, points: Points, x: number, y: number, width: number): readonly DrawOp[] {
  const axis = scale(one.series.flatMap((series) => series.values));
  const left = x + PLOT.left;
  const right = x + width;
  const top = y + PLOT.top;
  const low = y + HEIGHT - PLOT.bottom;
  const atX = (index: number) => left + ((index + 0.5) * (right - left)) / points.length;
  const atY = (value: number) => low - ((value - axis.from) / (axis.to - axis.from)) * (low - top);
  const label: TextStyle = { ...SMALL, colour: COLOURS.muted };
  const ops: DrawOp[] = [textLine(one.title, x, y, { ...SMALL, font: 'semibold', colour: COLOURS.ink })];

  for (const tick of axis.ticks) {
    const text = formatNumber(tick, axis.decimals);
    ops.push({ kind: 'line', from: [left, atY(tick)], to: [right, atY(tick)], width: 0.4, colour: COLOURS.hairline });
    ops.push(textLine(text, left - 4 - textWidth(text, label.font, label.size), atY(tick) - label.leading / 2, label));
  }
  for (const [index, point] of points.entries()) {
    const shift = textWidth(point.label, label.font, label.size) / 2;
    ops.push(textLine(point.label, atX(index) - shift, low + 5, label));
  }
  for (const [order, series] of one.series.entries()) {
    const offset = one.series.length === 1 ? 0 : order === 0 ? -5 : 5;
    ops.push(...rangeBars(series, axis, (index) => atX(index) + offset, atY));
  }
  for (const [order, series] of one.series.entries()) {
    const offset = one.series.length === 1 ? 0 : order === 0 ? -5 : 5;
    ops.push(...joinedMarks(series, (index) => atX(index) + offset, atY));
  }
  return [...ops, ...legend(one.series, x, y + SMALL.leading + 2)];
}

/** Allowed range: light bar with ends drawn where the limit is; open where there is none. */
function rangeBars(
  series: Series,
  axis: { readonly from: number; readonly to: number },
  atX: (index: number) => number,
  atY: (value: number) => number,
): readonly DrawOp[] {
  const half = 4;
  return series.values.flatMap((value, index): DrawOp[] => {
    if (!value || (value.min === null && value.max === null)) return [];
    const from = atY(Math.max(axis.from, value.min ?? axis.from));
    const to = atY(Math.min(axis.to, value.max ?? axis.to));
    const [x1, x2] = [round(atX(index) - half), round(atX(index) + half)];
    const [y1, y2] = [round(from), round(to)];
    const bar: DrawOp = {
      kind: 'path',
      path: `M ${x1} ${y1} L ${x2} ${y1} L ${x2} ${y2} L ${x1} ${y2} Z`,
      fill: COLOURS.band,
      stroke: null,
      width: 0,
    };
    const ends = [value.min, value.max].flatMap((limit): DrawOp[] =>
      limit === null || limit < axis.from || limit > axis.to
        ? []
        : [{ kind: 'line', from: [x1, atY(limit)], to: [x2, atY(limit)], width: 1, colour: COLOURS.green }],
    );
    return [bar, ...ends];
  });
}

function joinedMarks(
  series: Series,
  atX: (index: number) => number,
  atY: (value: number) => number,
): readonly DrawOp[] {
  const ops: DrawOp[] = [];
  let before: readonly [number, number] | null = null;
  for (const [index, value] of series.values.entries()) {
    if (!value) continue;
    const here = [atX(index), atY(value.value)] as const;
    if (before) ops.push({ kind: 'line', from: before, to: here, width: 0.9, colour: COLOURS.ink, ...dashOf(series) });
    before = here;
  }
  for (const [index, value] of series.values.entries()) {
    if (value) ops.push(markAt(series.mark, atX(index), atY(value.value)));
  }
  return ops;
}

function dashOf(series: Series): { readonly dash?: number } {
  return series.mark === 'square' ? { dash: 2.5 } : {};
}

function markAt(mark: Mark, x: number, y: number): DrawOp {
  const half = 2.4;
  const [x1, x2, y1, y2] = [x - half, x + half, y - half, y + half].map(round);
  const path = mark === 'round' ? circle(x, y, half) : `M ${x1} ${y1} L ${x2} ${y1} L ${x2} ${y2} L ${x1} ${y2} Z`;
  return { kind: 'path', path, fill: mark === 'round' ? COLOURS.ink : COLOURS.paper, stroke: COLOURS.ink, width: 0.9 };
}

function legend(series: readonly Series[], x: number, y: number): readonly DrawOp[] {
  let at = x;
  return series.flatMap((one) => {
    const ops = [markAt(one.mark, at + 3, y + SMALL.leading / 2), textLine(one.label, at + 9, y, SMALL)];
    at += 19 + textWidth(one.label, SMALL.font, SMALL.size);
    return ops;
  });
}

/** Round ends around all values and limits; a limit far away does not squeeze the values together. */
function scale(values: readonly (Value | null)[]): {
  readonly from: number;
  readonly to: number;
  readonly ticks: readonly number[];
  readonly decimals: number;
} {
  const shown = values.filter((value) => value !== null);
  const measured = shown.map((value) => value.value);
  const [lowest, highest] = [Math.min(...measured), Math.max(...measured)];
  const reach = Math.max((highest - lowest) * 3, Math.abs(highest) * 0.5, 1e-6);
  const limits = shown
    .flatMap((value) => [value.min, value.max])
    .filter((limit) => limit !== null && limit >= lowest - reach && limit <= highest + reach)
    .map(Number);
  const span = Math.max(highest, ...limits) - Math.min(lowest, ...limits);
  const padding = span > 0 ? span * 0.08 : Math.max(1, Math.abs(highest) * 0.1);
  const rawFrom = Math.min(lowest, ...limits) - padding;
  const rawTo = Math.max(highest, ...limits) + padding;
  const step = roundStep((rawTo - rawFrom) / 4);
  // No reading of this chart is ever below zero, so neither is its axis.
  const isAllPositive = Math.min(lowest, ...limits) >= 0;
  const from = Math.floor(rawFrom / step) * step;
  const start = isAllPositive ? Math.max(0, from) : from;
  const to = Math.ceil(rawTo / step) * step;
  const count = Math.round((to - start) / step);
  return {
    from: start,
    to,
    ticks: Array.from({ length: count + 1 }, (_, index) => start + index * step),
    decimals: Math.max(0, -Math.floor(Math.log10(step))),
  };
}

function roundStep(rough: number): number {
  const power = 10 ** Math.floor(Math.log10(rough));
  const factor = [1, 2, 5, 10].find((one) => rough <= one * power) ?? 10;
  return factor * power;
}

function altText(panels: readonly Panel[], points: Points): string {
  const lines = panels.flatMap((one) =>
    one.series.map((series) => {
      const values = points.map((point, index) => `${point.label} ${series.values[index]?.text ?? 'not measured'}`);
      return `${series.label}: ${values.join(', ')}.`;
    }),
  );
  return `Readings across the firing points. ${lines.join(' ')}`;
}
