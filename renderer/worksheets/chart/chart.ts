/** A chart of a worksheet as plain data, in own units; the picture converts them for the reader. */
import type { Measure } from '../core/measure.ts';

export type ChartPoint = readonly [x: number, y: number];

export type Curve = {
  readonly label: string;
  readonly points: readonly ChartPoint[];
  /** `main`: the one asked about. `other`: for comparison. `bound`: a limit. */
  readonly weight: 'main' | 'other' | 'bound';
};

export type ChartMark = { readonly label: string; readonly at: ChartPoint };

export type Axis = { readonly label: string; readonly measure: Measure };

export type Chart = {
  readonly title: string;
  readonly x: Axis;
  readonly y: Axis;
  readonly curves: readonly Curve[];
  readonly marks: readonly ChartMark[];
};

/** A curve at evenly spaced places; where the formula gives no answer it has no point. */
export function curveOver(
  from: number,
  to: number,
  at: (x: number) => { readonly ok: true; readonly value: number } | { readonly ok: false },
  steps = 60,
): readonly ChartPoint[] {
  return Array.from({ length: steps + 1 }, (_, index) => from + ((to - from) * index) / steps).flatMap((x) => {
    const y = at(x);
    return y.ok ? [[x, y.value] as const] : [];
  });
}
