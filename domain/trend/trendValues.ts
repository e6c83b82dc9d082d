/**
 * The numbers of one visit that are followed over the years, by quantity and point: what was read, and what follows from
 * it (ΔT, flue over return, pressure rise, input by the meter, flow).
 *
 * Found and left: where a visit read the same twice, before the work and after it, both count, each for itself.
 */
import type { Celsius } from '../quantity/units.ts';
import type { PastReading } from './pastRun.ts';
import type { TrendQuantity } from './symptoms.ts';

export type TrendValue = {
  readonly trend: TrendQuantity;
  readonly point: string | null;
  readonly value: number;
  readonly plusMinus: number;
  /** `>`: at least this much. */
  readonly comparator: '=' | '>' | '<';
  readonly readings: readonly PastReading[];
  /** Of the water coming back while it was read; null: not read, or it does not matter here. */
  readonly returnC: Celsius | null;
};

export type TrendState = 'found' | 'left';

export function trendKey(of: Pick<TrendValue, 'trend' | 'point'>): string {
  return of.point === null ? of.trend : `${of.trend}@${of.point}`;
}

export function trendValues(
  readings: readonly PastReading[],
  state: TrendState,
  firingPoints: readonly string[],
): ReadonlyMap<string, TrendValue> {
  const pick = picker(readings, state);
  const values = [
    ...firingPoints.flatMap((point) => atFiringPoint(point, pick)),
    ...plain('cold-pressure', pick('systemPressureBarG', 'cold')),
    ...plain('hot-pressure', pick('systemPressureBarG', 'hot')),
    ...difference('pressure-rise', null, pick('systemPressureBarG', 'hot'), pick('systemPressureBarG', 'cold')),
    ...plain('dynamic-inlet-pressure', pick('inletPressureMbarG', 'dynamic')),
    ...plain('all-on-inlet-pressure', pick('inletPressureMbarG', 'dynamic-all-on')),
    ...plain('ph', pick('waterPh', 'after')),
    ...plain('conductivity', pick('conductivityUsPerCm', 'after')),
    ...plain('hardness', pick('hardnessMmolPerL', 'after')),
    ...plain('glycol-share', pick('glycolPct', 'after')),
    ...plain('neutraliser-outlet-ph', pick('condensateOutletPh', null)),
    ...plain('hot-water-flow', pick('hotWaterFlowLPerMin', null)),
    ...difference('hot-water-rise', null, pick('hotOutletC', null), pick('coldInletC', null)),
    ...throughTheCircuit(pick, firingPoints),
  ];
  return new Map(values.map((value) => [trendKey(value), value]));
}

type PickReading = (quantity: PastReading['quantity'], point: string | null) => PastReading | undefined;

/** Of a series its last sample, of several items that read the same the first or the last one. */
function picker(readings: readonly PastReading[], state: TrendState): PickReading {
  const groups = Map.groupBy(readings, (one) => `${one.quantity} ${one.point ?? ''}`);
  return (quantity, point) => {
    const all = [...(groups.get(`${quantity} ${point ?? ''}`) ?? [])].sort(byTimeThenSample);
    const itemKey = (state === 'found' ? all[0] : all.at(-1))?.itemKey;
    return all.findLast((one) => one.itemKey === itemKey);
  };
}

function byTimeThenSample(one: PastReading, other: PastReading): number {
  return one.measuredAt < other.measuredAt
    ? -1
    : one.measuredAt > other.measuredAt
      ? 1
      : one.sample - other.sample || (one.readingId < other.readingId ? -1 : 1);
}

function atFiringPoint(point: string, pick: PickReading): readonly TrendValue[] {
  const back = pick('returnC', point);
  const returnC = back === undefined ? null : (back.valueOwn as Celsius);
  const flue = pick('flueGasC', point);
  return [
    ...plain('o2', pick('o2DryVolPct', point), point, returnC),
    ...plain('co2', pick('co2DryVolPct', point), point, returnC),
    ...plain('co', pick('coPpm', point), point, returnC),
    ...plain('flue-temperature', flue, point, returnC),
    ...plain('return-temperature', back, point, returnC),
    ...difference('flue-over-return', point, flue, back, returnC),
    ...difference('delta-t', point, pick('supplyC', point), back, returnC),
  ];
}

/**
 * Formula  input = 3600 · turns · dial / seconds · heating value / 3.6, taken for the output; flow ∝ output / ΔT
 * Valid    as a comparison of two visits of one appliance at one firing point, not as kilowatts or litres
 * Source   common practice: without a flow meter the flow follows from output and ΔT
 */
function throughTheCircuit(pick: PickReading, firingPoints: readonly string[]): readonly TrendValue[] {
  const point = firingPoints[0];
  if (point === undefined) return [];
  const atMeter = (quantity: PastReading['quantity']) => pick(quantity, null) ?? pick(quantity, point);
  const turns = atMeter('meterTurns');
  const dial = atMeter('meterDialM3');
  const heat = atMeter('heatingValueMjPerM3');
  const seconds = atMeter('meterSeconds');
  const measured = plain('flow', pick('systemFlowLPerMin', null));
  if (!turns || !dial || !heat || !seconds || !(seconds.valueOwn > 0)) return measured;
  const readings = [turns, dial, heat, seconds];
  const kw = (1000 * turns.valueOwn * dial.valueOwn * heat.valueOwn) / seconds.valueOwn;
  const output: TrendValue = {
    trend: 'output',
    point: null,
    value: kw,
    plusMinus: 0,
    comparator: '=',
    readings,
    returnC: null,
  };
  const [deltaT] = difference('delta-t', point, pick('supplyC', point), pick('returnC', point));
  if (measured.length > 0 || deltaT === undefined || !(deltaT.value > 0)) return [output, ...measured];
  return [output, { ...output, trend: 'flow', value: kw / deltaT.value, readings: [...readings, ...deltaT.readings] }];
}

function plain(
  trend: TrendQuantity,
  reading: PastReading | undefined,
  point: string | null = null,
  returnC: Celsius | null = null,
): readonly TrendValue[] {
  if (reading === undefined) return [];
  const { valueOwn: value, plusMinus, comparator } = reading;
  return [{ trend, point, value, plusMinus, comparator, readings: [reading], returnC }];
}

/** Of an over-range display nothing is known that a difference could be made of. */
function difference(
  trend: TrendQuantity,
  point: string | null,
  one: PastReading | undefined,
  other: PastReading | undefined,
  returnC: Celsius | null = null,
): readonly TrendValue[] {
  if (one?.comparator !== '=' || other?.comparator !== '=') return [];
  return [
    {
      trend,
      point,
      value: one.valueOwn - other.valueOwn,
      plusMinus: Math.hypot(one.plusMinus, other.plusMinus),
      comparator: '=',
      readings: [one, other],
      returnC,
    },
  ];
}
