/** A chart in the reader's units, with the span of its axes and the numbers beside them. */
import type { EntryUnit } from '../../../domain/quantity/entryUnits.ts';
import { formatNumber } from '../../../domain/quantity/formatQuantity.ts';
import type { UnitSystem } from '../../../domain/quantity/preferredUnit.ts';
import { unitOf } from '../core/measure.ts';
import type { Axis, Chart, ChartMark, ChartPoint, Curve } from './chart.ts';

export type DrawnAxis = {
  readonly label: string;
  readonly from: number;
  readonly to: number;
  readonly ticks: readonly { readonly at: number; readonly text: string }[];
};

export type DrawnChart = {
  readonly title: string;
  readonly x: DrawnAxis;
  readonly y: DrawnAxis;
  readonly curves: readonly Curve[];
  readonly marks: readonly ChartMark[];
};

/** null: nothing to draw. */
export function drawnChart(chart: Chart, unitSystem: UnitSystem): DrawnChart | null {
  const [xUnit, yUnit] = [unitOf(chart.x.measure, unitSystem), unitOf(chart.y.measure, unitSystem)];
  const inUnits = ([x, y]: ChartPoint): ChartPoint => [xUnit.fromOwn(x), yUnit.fromOwn(y)];
  const curves = chart.curves
    .filter(({ points }) => points.length > 1)
    .map((curve) => ({ ...curve, points: curve.points.map(inUnits) }));
  const marks = chart.marks.map((mark) => ({ ...mark, at: inUnits(mark.at) }));
  if (!curves.some(({ weight }) => weight === 'main')) return null;
  const all = [...curves.flatMap(({ points }) => points), ...marks.map(({ at }) => at)];
  return {
    title: chart.title,
    x: axis(
      chart.x,
      xUnit,
      all.map(([x]) => x),
    ),
    y: axis(
      chart.y,
      yUnit,
      all.map(([, y]) => y),
    ),
    curves,
    marks,
  };
}

function axis({ label }: Axis, unit: EntryUnit, values: readonly number[]): DrawnAxis {
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const step = roundStep((most - least || Math.abs(most) || 1) / MOST_TICKS);
  const first = Math.floor(least / step);
  const last = Math.max(first + 1, Math.ceil(most / step));
  const decimals = Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
  return {
    label: unit.symbol === '' ? label : `${label}, ${unit.symbol}`,
    from: first * step,
    to: last * step,
    ticks: Array.from({ length: last - first + 1 }, (_, index) => {
      const at = (first + index) * step;
      return { at, text: formatNumber(at, decimals) };
    }),
  };
}

const MOST_TICKS = 6;

/** 1, 2 or 5 times a power of ten, not below. */
function roundStep(least: number): number {
  const power = 10 ** Math.floor(Math.log10(least));
  const factor = [1, 2, 5, 10].find((one) => one * power >= least * (1 - 1e-9)) ?? 10;
  return factor * power;
}
