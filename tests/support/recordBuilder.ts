/** A clean, physically consistent run for the judgement's test sheet, and small ways to change it. */
import type { RecordedInstrument, RecordedReading, RunRecord } from '../../domain/procedure/runRecord.ts';
import { entryUnits } from '../../domain/quantity/entryUnits.ts';
import type { QuantityKey } from '../../domain/quantity/quantities.ts';
import { calibratedUntil } from './calibratedUntil.ts';

/** Minutes after the first instant of the visit. */
export function at(minutes: number): string {
  return new Date(Date.UTC(2026, 9, 6, 8, 0, 0) + minutes * 60_000).toISOString();
}

export const ANALYSER: RecordedInstrument = {
  instrumentId: 'analyser-1',
  label: 'Analyser 1',
  serial: 'A-001',
  kind: 'analyser',
  calibrations: calibratedUntil('2027-03-03'),
  accuracy: {
    o2DryVolPct: { abs: 0.2, relPct: 0 },
    coPpm: { abs: 3, relPct: 5 },
    flueGasC: { abs: 1, relPct: 0 },
  },
  rangeMax: { coPpm: 4000 },
};

export const MANOMETER: RecordedInstrument = {
  instrumentId: 'manometer-1',
  label: 'Manometer 1',
  serial: 'M-001',
  kind: 'manometer',
  calibrations: calibratedUntil('2027-01-31'),
  accuracy: { inletPressureMbarG: { abs: 0.05, relPct: 0.5 } },
  rangeMax: {},
};

type Spec = {
  readonly quantity: QuantityKey;
  readonly value: number | null;
  readonly itemKey: string;
  readonly stepKey: string;
  readonly minutes: number;
  readonly point?: string | null;
  readonly sample?: number;
  readonly instrumentId?: string | null;
  readonly typedUnit?: string;
};

export function reading(spec: Spec & Partial<Omit<RecordedReading, keyof Spec>>): RecordedReading {
  const { quantity, value, itemKey, stepKey, minutes, point = null, sample = 1, ...rest } = spec;
  const [own] = entryUnits(quantity);
  const unit = entryUnits(quantity).find(({ symbol }) => symbol === spec.typedUnit) ?? own;
  return {
    readingId: readingIdOf(quantity, point, sample),
    visitId: 'visit-1',
    stepKey,
    itemKey,
    quantity,
    point,
    sample,
    typedText: value === null ? '' : String(Number(unit.fromOwn(value).toPrecision(6))),
    typedUnit: unit.symbol,
    valueOwn: value,
    comparator: '=',
    notMeasuredReason: null,
    instrumentId: null,
    measuredById: 'staff-1',
    typedById: 'staff-1',
    measuredAt: at(minutes),
    supersededById: null,
    origin: 'typed',
    ...rest,
  };
}

export function readingIdOf(quantity: QuantityKey, point: string | null = null, sample = 1): string {
  return `${quantity}@${point ?? ''}#${sample}`;
}

type FluePoint = Readonly<Partial<Record<QuantityKey, number>>>;

/** Natural gas on a 24 kW boiler; CO2 follows from O2 with a CO2max of 11.86 %. */
const HIGH: FluePoint = {
  o2DryVolPct: 4.9,
  co2DryVolPct: 9.1,
  coPpm: 62,
  flueGasC: 58.4,
  intakeAirC: 18.2,
  supplyC: 62,
  returnC: 47.5,
};
const LOW: FluePoint = {
  o2DryVolPct: 5.5,
  co2DryVolPct: 8.7,
  coPpm: 14,
  flueGasC: 44.1,
  intakeAirC: 18.4,
  supplyC: 48,
  returnC: 41.2,
};

function fluePoint(point: string, values: FluePoint, minutes: number): readonly RecordedReading[] {
  return [0, 1].flatMap((index) =>
    Object.entries(values).map(([quantity, value]) =>
      reading({
        quantity: quantity as QuantityKey,
        // The second sample drifts by less than the sheet's steadiness allows.
        value: quantity === 'coPpm' || quantity === 'flueGasC' ? value + index : value,
        itemKey: `combustion-${point}`,
        stepKey: 'combustion',
        point,
        sample: index + 1,
        minutes: minutes + index * 1.5,
        instrumentId: ['o2DryVolPct', 'co2DryVolPct', 'coPpm', 'flueGasC', 'intakeAirC'].includes(quantity)
          ? ANALYSER.instrumentId
          : null,
      }),
    ),
  );
}

export function cleanRecord(changes: Partial<RunRecord> = {}): RunRecord {
  const before = { stepKey: 'before-firing' } as const;
  const analyser = { instrumentId: ANALYSER.instrumentId } as const;
  const manometer = { instrumentId: MANOMETER.instrumentId } as const;
  const combustion = { stepKey: 'combustion', point: 'high' } as const;
  return {
    runId: 'run-1',
    kind: 'startup',
    fuel: 'natural-gas',
    startedAt: at(0),
    site: {
      altitudeM: 120,
      systemHeightM: 6,
      systemVolumeL: 120,
      emitters: ['panel-radiators'],
      fuel: 'natural-gas',
      gasSupplyKind: 'meter',
      meterCompensation: 'temperature-pressure',
      heatingValueMjPerM3: 38.5,
      heatingValueSource: 'supplier, September 2026',
      jurisdiction: 'DE-BY',
      timeZone: 'Europe/Berlin',
      coldWaterC: 11,
    },
    appliance: {
      serial: 'AB1234567',
      maker: 'Invented Works',
      model: 'T 24',
      plateFuel: 'natural-gas',
      tagFuel: null,
      hasConversionRecord: false,
      ratedInputKw: 24,
      ratedInputBasis: 'gross',
    },
    instruments: [ANALYSER, MANOMETER],
    answers: [
      { itemKey: 'water-side', stepKey: 'before-firing', value: 'yes', reason: null, byId: 'staff-1', at: at(16) },
    ],
    readings: [
      reading({ quantity: 'freshAirO2VolPct', value: 20.9, itemKey: 'fresh-o2', minutes: 5, ...before, ...analyser }),
      reading({ quantity: 'freshAirCoPpm', value: 1, itemKey: 'fresh-co', minutes: 5, ...before, ...analyser }),
      reading({ quantity: 'roomCoPpm', value: 2, itemKey: 'room-co', minutes: 6, ...before, ...analyser }),
      reading({
        quantity: 'inletPressureMbarG',
        value: 21.2,
        itemKey: 'inlet-static',
        point: 'static',
        minutes: 10,
        ...before,
        ...manometer,
      }),
      reading({
        quantity: 'tightnessDropMbar',
        value: 0,
        itemKey: 'tightness-drop',
        minutes: 12,
        ...before,
        ...manometer,
      }),
      reading({ quantity: 'reliefSettingBarG', value: 3, itemKey: 'relief', minutes: 14, ...before }),
      reading({ quantity: 'vesselPreChargeBarG', value: 1, itemKey: 'pre-charge', minutes: 17, ...before }),
      reading({
        quantity: 'systemPressureBarG',
        value: 1.3,
        itemKey: 'pressure-cold',
        point: 'cold',
        minutes: 20,
        ...before,
      }),
      reading({ quantity: 'waterPh', value: 8.3, itemKey: 'ph', point: 'after', minutes: 22, ...before }),
      reading({ quantity: 'inhibitorPct', value: 2.1, itemKey: 'inhibitor', point: 'after', minutes: 23, ...before }),
      ...fluePoint('high', HIGH, 50),
      reading({
        quantity: 'inletPressureMbarG',
        value: 20.1,
        itemKey: 'inlet-dynamic',
        stepKey: 'combustion',
        point: 'dynamic',
        minutes: 53,
        ...manometer,
      }),
      // 2.244 m³/h × 38.5 MJ/m³ ÷ 3.6 = 24.0 kW
      reading({ quantity: 'meterDialM3', value: 0.01, itemKey: 'dial', minutes: 54, ...combustion }),
      reading({ quantity: 'meterTurns', value: 5, itemKey: 'turns', minutes: 54, ...combustion }),
      reading({ quantity: 'meterSeconds', value: 80.3, itemKey: 'seconds', minutes: 54, ...combustion }),
      ...fluePoint('low', LOW, 64),
      reading({
        quantity: 'systemPressureBarG',
        value: 1.7,
        itemKey: 'pressure-hot',
        stepKey: 'leaving',
        point: 'hot',
        minutes: 75,
      }),
      reading({ quantity: 'supplySetpointC', value: 60, itemKey: 'setpoint', stepKey: 'leaving', minutes: 76 }),
      reading({ quantity: 'mixedOutletC', value: 45, itemKey: 'mixed', stepKey: 'leaving', minutes: 78 }),
    ],
    holds: [{ itemKey: 'de-air', startedAt: at(24), requiredS: 300, endedAt: at(30), clockJumped: false }],
    tunings: [
      {
        itemKey: 'tuning',
        startedAt: at(32),
        stages: [
          { stageKey: 'high', reachedAt: at(34) },
          { stageKey: 'low', reachedAt: at(37) },
        ],
        finishedAt: at(40),
        interruptedAt: null,
        interruptedReason: null,
      },
    ],
    photos: [],
    firingPoints: [
      { firingPoint: 'high', reachedAt: at(45) },
      { firingPoint: 'low', reachedAt: at(58) },
    ],
    signOffs: [],
    openMakeSafes: 0,
    openNotices: [],
    ...changes,
  };
}

/** Changes the readings of a quantity at a point; without a sample, all of them. */
export function withReading(
  record: RunRecord,
  where: { readonly quantity: QuantityKey; readonly point?: string | null; readonly sample?: number },
  change: Partial<RecordedReading>,
): RunRecord {
  let found = 0;
  const readings = record.readings.map((one) => {
    const isMeant =
      one.quantity === where.quantity &&
      (where.point === undefined || one.point === where.point) &&
      (where.sample === undefined || one.sample === where.sample);
    if (!isMeant) return one;
    found += 1;
    return { ...one, ...change };
  });
  if (found === 0) throw new Error(`no ${where.quantity} at ${where.point} in the record`);
  return { ...record, readings };
}

export function withValue(
  record: RunRecord,
  quantity: QuantityKey,
  point: string | null,
  valueOwn: number | null,
): RunRecord {
  return withReading(record, { quantity, point }, { valueOwn, typedText: valueOwn === null ? '' : String(valueOwn) });
}

export function withoutReading(record: RunRecord, quantity: QuantityKey, point?: string | null): RunRecord {
  return {
    ...record,
    readings: record.readings.filter(
      (one) => !(one.quantity === quantity && (point === undefined || one.point === point)),
    ),
  };
}

export function withReadings(record: RunRecord, ...added: readonly RecordedReading[]): RunRecord {
  return { ...record, readings: [...record.readings, ...added] };
}
