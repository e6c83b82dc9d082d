/** One followed number over the years: a point for each visit that read it, and where it began anew. */
import type { FuelKey } from '../procedure/modelSheet.ts';
import type { PastRun } from './pastRun.ts';
import type { TrendQuantity } from './symptoms.ts';
import { type TrendState, trendValues } from './trendValues.ts';

export type TrendPoint = {
  readonly runId: string;
  readonly on: string;
  readonly kind: PastRun['kind'];
  /** As it was left; where the work changed it, as it was found stands beside it. */
  readonly value: number;
  readonly foundValue: number | null;
  readonly comparator: '=' | '>' | '<';
  /** Earlier numbers say nothing about this one. */
  readonly startsBaseline: boolean;
  readonly fuel: FuelKey;
};

export type TrendSeries = {
  readonly trend: TrendQuantity;
  readonly point: string | null;
  readonly points: readonly TrendPoint[];
};

export function trendSeries(runs: readonly PastRun[], firingPoints: readonly string[]): readonly TrendSeries[] {
  const series = new Map<string, { readonly of: Omit<TrendSeries, 'points'>; readonly points: TrendPoint[] }>();
  for (const [index, run] of runs.entries()) {
    const values = (state: TrendState) => trendValues(run.readings, state, firingPoints);
    const found = values('found');
    for (const [key, left] of values('left')) {
      const { trend, point } = left;
      const entry = series.get(key) ?? { of: { trend, point }, points: [] };
      const asFound = found.get(key);
      entry.points.push({
        runId: run.runId,
        on: run.on,
        kind: run.kind,
        value: left.value,
        foundValue: asFound === undefined || asFound.value === left.value ? null : asFound.value,
        comparator: left.comparator,
        startsBaseline: run.startsBaseline || (index > 0 && run.fuel !== runs[index - 1]?.fuel),
        fuel: run.fuel,
      });
      series.set(key, entry);
    }
  }
  return [...series.values()].map(({ of, points }) => ({ ...of, points }));
}
