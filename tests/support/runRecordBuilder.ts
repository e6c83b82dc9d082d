/** Run records for tests, built up by pure steps: each function answers a new record. */
import type { FuelKey, StepItem } from '../../domain/procedure/modelSheet.ts';
import type { RecordedReading, RunRecord } from '../../domain/procedure/runRecord.ts';
import type { QuantityKey } from '../../domain/quantity/quantities.ts';

export const TECHNICIAN_ID = 'staff-technician';
export const DAY_START = '2026-03-02T08:00:00Z';

export function emptyRecord(fuel: FuelKey, overrides: Partial<RunRecord> = {}): RunRecord {
  return {
    runId: 'run-1',
    kind: 'startup',
    fuel,
    startedAt: DAY_START,
    site: {
      altitudeM: 120,
      systemHeightM: 6,
      systemVolumeL: 110,
      emitters: ['panel-radiators'],
      fuel,
      gasSupplyKind: 'meter',
      meterCompensation: 'none',
      heatingValueMjPerM3: null,
      heatingValueSource: null,
      jurisdiction: 'test',
      timeZone: 'Etc/UTC',
      coldWaterC: null,
    },
    appliance: {
      serial: 'AB1234567',
      maker: 'a maker',
      model: 'a model',
      plateFuel: fuel,
      tagFuel: null,
      hasConversionRecord: false,
      ratedInputKw: 24,
      ratedInputBasis: 'net',
    },
    instruments: [],
    answers: [],
    readings: [],
    holds: [],
    tunings: [],
    photos: [],
    firingPoints: [],
    signOffs: [],
    openMakeSafes: 0,
    openNotices: [],
    ...overrides,
  };
}

export function secondsAfter(iso: string, seconds: number): string {
  return new Date(Date.parse(iso) + seconds * 1000).toISOString();
}

export function withAnswer(
  record: RunRecord,
  itemKey: string,
  value: string | null,
  at: string,
  more: { readonly reason?: string; readonly byId?: string; readonly stepKey?: string } = {},
): RunRecord {
  const answer = {
    itemKey,
    stepKey: more.stepKey ?? 'any',
    value,
    reason: more.reason ?? null,
    byId: more.byId ?? TECHNICIAN_ID,
    at,
  };
  return { ...record, answers: [...record.answers.filter((one) => one.itemKey !== itemKey), answer] };
}

export function reading(
  itemKey: string,
  quantity: QuantityKey,
  valueOwn: number | null,
  measuredAt: string,
  more: Partial<RecordedReading> = {},
): RecordedReading {
  return {
    readingId: `${itemKey}/${quantity}/${more.sample ?? 1}/${measuredAt}`,
    visitId: 'visit-1',
    stepKey: 'any',
    itemKey,
    quantity,
    point: null,
    sample: 1,
    typedText: valueOwn === null ? '' : String(valueOwn),
    typedUnit: '',
    valueOwn,
    comparator: '=',
    notMeasuredReason: null,
    instrumentId: null,
    measuredById: TECHNICIAN_ID,
    typedById: TECHNICIAN_ID,
    measuredAt,
    supersededById: null,
    origin: 'typed',
    ...more,
  };
}

export function withReading(record: RunRecord, one: RecordedReading): RunRecord {
  return { ...record, readings: [...record.readings, one] };
}

/** What numbers a test enters, and with what. */
export type EntryStyle = {
  readonly stepKey: string;
  readonly instrumentId: string | null;
  readonly entryFor: (quantity: QuantityKey, point: string | null) => number;
};

const PLAIN: EntryStyle = { stepKey: 'any', instrumentId: null, entryFor: () => 1 };

/** One acceptable entry for an item: what a careful technician would do next with it. */
export function withAcceptableEntry(
  record: RunRecord,
  item: StepItem,
  at: string,
  style: EntryStyle = PLAIN,
): RunRecord {
  const { stepKey, instrumentId } = style;
  switch (item.kind) {
    case 'confirm':
      return withAnswer(record, item.key, 'yes', at, { stepKey });
    case 'choose':
      return withAnswer(record, item.key, acceptableOption(item, record), at, {
        stepKey,
        reason: 'seen and thought about',
      });
    case 'note':
      return withAnswer(record, item.key, item.identifies === 'serial' ? record.appliance.serial : 'noted', at, {
        stepKey,
      });
    case 'witness':
      return withAnswer(record, item.key, 'Somebody Else', at, { stepKey });
    case 'parts':
    case 'lockouts':
      return withAnswer(record, item.key, 'none', at, { stepKey });
    case 'read': {
      const { quantity, point } = item;
      const value = style.entryFor(quantity, point);
      return withReading(record, reading(item.key, quantity, value, at, { point, stepKey, instrumentId }));
    }
    case 'series':
      return withSample(record, item, at, style);
    case 'hold': {
      const hold = { itemKey: item.key, startedAt: at, requiredS: item.seconds, endedAt: null, clockJumped: false };
      return { ...record, holds: [...record.holds, hold] };
    }
    case 'tuning':
      return withTuningMovedOn(
        record,
        item.key,
        item.stages.map((stage) => stage.key),
        at,
      );
    case 'photo': {
      const photo = { itemKey: item.key, attachmentId: `photo-${item.key}`, sha256: '0'.repeat(64), takenAt: at };
      return { ...record, photos: [...record.photos, photo] };
    }
    case 'sign-off': {
      const signOff = { itemKey: item.key, by: item.by, name: 'A Name', staffId: TECHNICIAN_ID, at };
      return { ...record, signOffs: [...record.signOffs, signOff] };
    }
  }
}

function acceptableOption(item: Extract<StepItem, { kind: 'choose' }>, record: RunRecord): string {
  if (item.identifies === 'plate-fuel' && item.options.some((option) => option.value === record.fuel)) {
    return record.fuel;
  }
  const option =
    item.options.find((one) => one.outcome === 'fine' && !isOtherFuel(one.value, record.fuel)) ??
    item.options.find((one) => one.outcome === 'finding');
  if (option === undefined) throw new Error(`item "${item.key}" has no option that may be left standing`);
  return option.value;
}

function isOtherFuel(value: string, fuel: FuelKey): boolean {
  return ['natural-gas', 'propane', 'butane', 'heating-oil'].includes(value) && value !== fuel;
}

function withSample(
  record: RunRecord,
  item: Extract<StepItem, { kind: 'series' }>,
  at: string,
  { stepKey, instrumentId, entryFor }: EntryStyle,
): RunRecord {
  const { firingPoint } = item;
  if (record.firingPoints.at(-1)?.firingPoint !== firingPoint) {
    return { ...record, firingPoints: [...record.firingPoints, { firingPoint, reachedAt: at }] };
  }
  const taken = record.readings.filter((one) => one.itemKey === item.key).map((one) => one.sample);
  const more = { sample: Math.max(0, ...taken) + 1, point: firingPoint, stepKey, instrumentId };
  return item.quantities.reduce(
    (filled, quantity) => withReading(filled, reading(item.key, quantity, entryFor(quantity, firingPoint), at, more)),
    record,
  );
}

function withTuningMovedOn(record: RunRecord, itemKey: string, stageKeys: readonly string[], at: string): RunRecord {
  const run = record.tunings.findLast((one) => one.itemKey === itemKey && one.interruptedAt === null);
  if (run === undefined) {
    const started = {
      itemKey,
      startedAt: at,
      stages: [],
      finishedAt: null,
      interruptedAt: null,
      interruptedReason: null,
    };
    return { ...record, tunings: [...record.tunings, started] };
  }
  const nextStage = stageKeys[run.stages.length];
  const movedOn =
    nextStage === undefined
      ? { ...run, finishedAt: at }
      : { ...run, stages: [...run.stages, { stageKey: nextStage, reachedAt: at }] };
  return { ...record, tunings: record.tunings.map((one) => (one === run ? movedOn : one)) };
}
