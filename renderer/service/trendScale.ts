/** Where the points of one chart over the years lie: dates across, the number and its limits upwards. */
import { Temporal } from 'temporal-polyfill';
import type { SheetLimit } from '../../domain/procedure/modelSheet.ts';
import { formatQuantity } from '../../domain/quantity/formatQuantity.ts';
import type { UnitSystem } from '../../domain/quantity/preferredUnit.ts';
import { TREND_UNITS } from '../../domain/trend/trendQuantity.ts';
import type { TrendSeries } from '../../domain/trend/trendSeries.ts';

export type TrendScale = {
  readonly low: number;
  readonly high: number;
  readonly ticks: readonly { readonly at: number; readonly text: string }[];
  /** null: the sheet sets none. */
  readonly min: number | null;
  readonly max: number | null;
  /** 0 at the left edge, 1 at the right one. */
  readonly shareOf: (on: string) => number;
  readonly years: readonly { readonly share: number; readonly text: string }[];
};

export function trendScale(
  series: TrendSeries,
  limits: readonly SheetLimit[],
  unitSystem: UnitSystem,
): TrendScale | null {
  const values = series.points.flatMap(({ value, foundValue }) =>
    foundValue === null ? [value] : [value, foundValue],
  );
  const [first] = series.points;
  const last = series.points.at(-1);
  if (first === undefined || last === undefined) return null;
  const { min, max } = bandOf(series, limits);
  const all = [...values, ...(min === null ? [] : [min]), ...(max === null ? [] : [max])];
  const [least, most] = [Math.min(...all), Math.max(...all)];
  const margin = (most - least || Math.abs(most) || 1) * 0.12;
  const [low, high] = [least - margin, most + margin];
  const from = Temporal.PlainDate.from(first.on).subtract({ days: 45 });
  const days = from.until(Temporal.PlainDate.from(last.on).add({ days: 45 })).days;
  const shareOf = (on: string) => from.until(Temporal.PlainDate.from(on)).days / days;
  return {
    low,
    high,
    ticks: [least, (least + most) / 2, most].map((at) => ({ at, text: tickText(series, at, unitSystem) })),
    min,
    max,
    shareOf,
    years: yearsBetween(first.on, last.on).map((year) => ({ share: shareOf(`${year}-01-01`), text: String(year) })),
  };
}

function tickText(series: TrendSeries, at: number, unitSystem: UnitSystem): string {
  const quantity = TREND_UNITS[series.trend];
  return quantity === null ? at.toFixed(2) : formatQuantity(quantity, at, unitSystem).text;
}

/** The limits of this number at this point and for the fuel it was last read with; the narrowest of several counts. */
function bandOf(
  { trend, point, points }: TrendSeries,
  limits: readonly SheetLimit[],
): { readonly min: number | null; readonly max: number | null } {
  const at = LIMITED_AT[trend];
  const quantity = TREND_UNITS[trend];
  const fuel = points.at(-1)?.fuel;
  const mine = limits.filter(
    (limit) =>
      limit.quantity === quantity &&
      at !== undefined &&
      (limit.point === null || limit.point === (at === 'own' ? point : at)) &&
      (limit.fuel === null || limit.fuel === fuel),
  );
  const mins = mine.flatMap(({ min }) => min ?? []);
  const maxes = mine.flatMap(({ max }) => max ?? []);
  return {
    min: mins.length === 0 ? null : Math.max(...mins),
    max: maxes.length === 0 ? null : Math.min(...maxes),
  };
}

/** Where the sheet limits what is followed. What only comes of two readings has no limit of its own. */
const LIMITED_AT: Readonly<Partial<Record<TrendSeries['trend'], string>>> = {
  o2: 'own',
  co2: 'own',
  co: 'own',
  'flue-temperature': 'own',
  'return-temperature': 'own',
  'delta-t': 'own',
  'cold-pressure': 'cold',
  'hot-pressure': 'hot',
  'dynamic-inlet-pressure': 'dynamic',
  'all-on-inlet-pressure': 'dynamic-all-on',
  ph: 'after',
  conductivity: 'after',
  hardness: 'after',
  'glycol-share': 'after',
};

function yearsBetween(firstOn: string, lastOn: string): readonly number[] {
  const [from, to] = [Number(firstOn.slice(0, 4)), Number(lastOn.slice(0, 4))];
  return Array.from({ length: to - from }, (_, index) => from + index + 1);
}
