/**
 * A visit held against earlier ones of the same appliance: for every number that is followed over the years what it was at
 * the baseline, what it was last time, what it is now, and whether the two may be compared at all.
 *
 * Found is what the boiler was like on arrival; it is held against how it was left before. A reading repeated after the
 * work is what this visit leaves.
 */
import type { FuelKey } from '../procedure/modelSheet.ts';
import { type Movement, movementOf } from './movement.ts';
import { type PastReading, type PastRun, sinceBaseline } from './pastRun.ts';
import type { TrendQuantity } from './symptoms.ts';
import { type TrendState, type TrendValue, trendKey, trendValues } from './trendValues.ts';
import { type ComparabilityObstacle, visitComparability } from './visitComparability.ts';

export type Earlier = {
  readonly runId: string;
  readonly kind: PastRun['kind'];
  readonly on: string;
  readonly value: TrendValue;
};

export type Comparison = {
  readonly earlier: Earlier;
  /** null: they may not be compared, because of the obstacles. */
  readonly movement: Movement | null;
  readonly obstacles: readonly ComparabilityObstacle[];
  /** They are compared all the same, but not without saying this. */
  readonly caveats: readonly ComparisonCaveat[];
};

export type ComparisonCaveat = 'other-instrument' | 'other-return-temperature';

export type TrendRow = {
  readonly trend: TrendQuantity;
  readonly point: string | null;
  readonly now: TrendValue;
  /** The first visit since which nothing began anew. */
  readonly baseline: Comparison | null;
  /** The newest visit before this one that read it; null when that is the baseline itself. */
  readonly last: Comparison | null;
};

export function compareVisits(input: {
  /** Oldest first. */
  readonly past: readonly PastRun[];
  readonly fuel: FuelKey;
  readonly readings: readonly PastReading[];
  readonly firingPoints: readonly string[];
  readonly state: TrendState;
}): readonly TrendRow[] {
  const { firingPoints } = input;
  const earlier = sinceBaseline(input.past, input.fuel).map((run) => ({
    run,
    values: trendValues(run.readings, 'left', firingPoints),
  }));
  const now = trendValues(input.readings, input.state, firingPoints);
  return [...now.values()].map((value) => {
    const all = earlier.flatMap(({ run, values }) => {
      const then = values.get(trendKey(value));
      return then === undefined ? [] : [{ runId: run.runId, kind: run.kind, on: run.on, value: then }];
    });
    const [baseline] = all;
    const last = all.length > 1 ? all.at(-1) : undefined;
    return {
      trend: value.trend,
      point: value.point,
      now: value,
      baseline: baseline === undefined ? null : compare(baseline, value),
      last: last === undefined ? null : compare(last, value),
    };
  });
}

function compare(earlier: Earlier, now: TrendValue): Comparison {
  const { obstacles, caveats } = comparability(earlier.value, now);
  const all: readonly ComparisonCaveat[] = isSameInstrument(earlier.value, now)
    ? caveats
    : [...caveats, 'other-instrument'];
  return {
    earlier,
    movement: obstacles.length > 0 ? null : movementOf(earlier.value, now),
    obstacles,
    caveats: all,
  };
}

/** The water decides how warm flue and supply are. It does not decide the mixture, so flue gas is compared, and it is said. */
function comparability(
  before: TrendValue,
  now: TrendValue,
): { readonly obstacles: readonly ComparabilityObstacle[]; readonly caveats: readonly ComparisonCaveat[] } {
  if (now.point === null) return { obstacles: [], caveats: [] };
  const compared = visitComparability({
    before: { firing: before.point ?? '', call: null, returnC: before.returnC },
    after: { firing: now.point, call: null, returnC: now.returnC },
  });
  const obstacles: readonly ComparabilityObstacle[] = compared.ok ? compared.value : ['return-not-read'];
  if (now.trend === 'return-temperature') return { obstacles: [], caveats: [] };
  if (!MIXTURE.has(now.trend)) return { obstacles, caveats: [] };
  return {
    obstacles: obstacles.filter((one) => one === 'other-firing-point' || one === 'other-call'),
    caveats: obstacles.includes('other-return-temperature') ? ['other-return-temperature'] : [],
  };
}

const MIXTURE: ReadonlySet<TrendQuantity> = new Set(['o2', 'co2', 'co']);

/** Unknown instruments are not held to be the same one. */
function isSameInstrument(before: TrendValue, now: TrendValue): boolean {
  const used = new Set(before.readings.map((one) => one.instrumentId));
  return now.readings.every(({ instrumentId }) => instrumentId !== null && used.has(instrumentId));
}
