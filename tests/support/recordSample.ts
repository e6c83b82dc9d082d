/** One startup, recorded in full, in an invented town with an invented maker: what documents and seals are tested on. */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import type { Finding, Verdict } from '../../domain/judgement/finding.ts';
import type { ModelSheet, SheetStep, StepItem } from '../../domain/procedure/modelSheet.ts';
import { parseModelSheet } from '../../domain/procedure/parseModelSheet.ts';
import type { RecordedAnswer, RecordedReading, RunRecord } from '../../domain/procedure/runRecord.ts';
import { entryUnits } from '../../domain/quantity/entryUnits.ts';
import { preferredUnit } from '../../domain/quantity/preferredUnit.ts';
import { type QuantityKey, quantitySpec } from '../../domain/quantity/quantities.ts';
import { unwrap } from '../../domain/result.ts';
import type { ComputedValue, RecordInput, SealPosition } from '../../electron/sealing/sealInput.ts';
import { exifSegment, grayMosaicJpeg } from './grayMosaicJpeg.ts';
import { stripedPng } from './stripedPng.ts';

export const SAMPLE_IDS = {
  visit: '01970000-0000-7000-8000-00000000a001',
  run: '01970000-0000-7000-8000-00000000b001',
  job: '01970000-0000-7000-8000-00000000c001',
  lead: '01970000-0000-7000-8000-00000000d001',
  helper: '01970000-0000-7000-8000-00000000d002',
  owner: '01970000-0000-7000-8000-00000000e001',
  builder: '01970000-0000-7000-8000-00000000e002',
  occupant: '01970000-0000-7000-8000-00000000e003',
  supplier: '01970000-0000-7000-8000-00000000e004',
  site: '01970000-0000-7000-8000-00000000f001',
  appliance: '01970000-0000-7000-8000-00000000f002',
  analyser: '01970000-0000-7000-8000-00000000f101',
  manometer: '01970000-0000-7000-8000-00000000f102',
  waterKit: '01970000-0000-7000-8000-00000000f103',
} as const;

/** The shipped general-practice sheet turned into an invented maker's: three firing points, an altitude rule, cover terms. */
export function sampleSheet(): ModelSheet {
  const shipped = new URL('../../assets/sheets/general-practice-natural-gas.json', import.meta.url);
  const sheet = unwrap(parseModelSheet(JSON.parse(readFileSync(shipped, 'utf8'))));
  const startup = sheet.startup.flatMap((step) => (step.key === 'combustion-low' ? [middleStep(step), step] : [step]));
  const maker = { kind: 'maker', source: 'Installation manual TB-28, section 9' } as const;
  return {
    ...sheet,
    sheetId: 'tarnbeck-tb-28',
    revision: '2026-03',
    issuedOn: '2026-03-02',
    title: 'Tarnbeck TB 28, natural gas',
    maker: 'Tarnbeck',
    models: ['TB 28'],
    firingPoints: [
      { key: 'high', label: 'High fire', settleS: 300 },
      { key: 'mid', label: 'Mid fire', settleS: 300 },
      { key: 'low', label: 'Low fire', settleS: 300 },
    ],
    altitude: { method: 'per-1000-ft', pct: 4, fromFt: 2000, countedFrom: 'sea-level', basis: maker },
    startup,
    cover: {
      terms: [
        { part: 'exchanger', registeredMonths: 120, unregisteredMonths: 12, countedFrom: 'started' },
        { part: 'parts', registeredMonths: 60, unregisteredMonths: 12, countedFrom: 'started' },
        { part: 'labour', registeredMonths: 12, unregisteredMonths: 0, countedFrom: 'started' },
      ],
      registration: { window: { days: 60 }, countedFrom: 'started', basis: maker },
      conditions: {
        serviceEveryMonths: 12,
        graceMonths: 1,
        serviceCountedFrom: 'anniversary',
        waterQualityRecorded: true,
        licensedInstaller: true,
        originalOwner: true,
        use: 'home',
        transferWindowDays: 90,
      },
    },
  };
}

function middleStep(low: SheetStep): SheetStep {
  const items = low.items.map((item): StepItem => {
    const key = item.key.replace(/^low-/, 'mid-');
    if (item.kind === 'series') return { ...item, key, firingPoint: 'mid' };
    if (item.kind === 'read') return { ...item, key, point: 'mid' };
    return { ...item, key };
  });
  return { ...low, key: 'combustion-mid', title: 'Combustion at mid fire', items };
}

const START_MS = Date.parse('2026-04-14T15:05:00Z');

export function minutesIn(minutes: number): string {
  return new Date(START_MS + minutes * 60_000).toISOString();
}

/** What was read, in the quantity's own unit: item, quantity, point, samples. */
const READ: readonly (readonly [string, QuantityKey, string | null, readonly number[]])[] = [
  ['room-co', 'roomCoPpm', 'before', [1]],
  ['tightness-pressure', 'tightnessPressureMbarG', 'test', [34.9]],
  ['tightness-minutes', 'tightnessMinutes', 'test', [10]],
  ['tightness-drop', 'tightnessDropMbar', 'test', [0]],
  ['inlet-static', 'inletPressureMbarG', 'static', [17.9]],
  ['vent-photos', 'ventPhotos', null, [6]],
  ['trap-water', 'condensatePouredL', null, [1]],
  ['voltage', 'supplyVoltageV', null, [121]],
  ['fill-ph', 'waterPh', 'before', [7.4]],
  ['fill-hardness', 'hardnessMmolPerL', 'before', [1.61]],
  ['fill-conductivity', 'conductivityUsPerCm', 'before', [312]],
  ['relief-setting', 'reliefSettingBarG', null, [2.07]],
  ['vessel-pre-charge', 'vesselPreChargeBarG', null, [0.83]],
  ['cold-pressure', 'systemPressureBarG', 'cold', [0.97]],
  ['pressure-after-purge', 'systemPressureBarG', 'after-purge', [0.95]],
  ['system-ph', 'waterPh', 'after', [7.9]],
  ['system-hardness', 'hardnessMmolPerL', 'after', [1.58]],
  ['system-conductivity', 'conductivityUsPerCm', 'after', [1480]],
  ['system-chloride', 'chlorideMgPerL', 'after', [212]],
  ['inhibitor', 'inhibitorPct', 'after', [1.1]],
  ['ignition-tries', 'ignitionTries', null, [1]],
  ['flame-current', 'flameCurrentUa', null, [7.2]],
  ['clean-starts', 'cleanStarts', null, [5]],
  ['fresh-o2', 'freshAirO2VolPct', null, [20.9]],
  ['fresh-co2', 'freshAirCo2VolPct', null, [0]],
  ['fresh-co', 'freshAirCoPpm', null, [0]],
  ['high-flue', 'o2DryVolPct', 'high', [4.9, 4.8]],
  ['high-flue', 'co2DryVolPct', 'high', [9.1, 9.1]],
  ['high-flue', 'coPpm', 'high', [84, 82]],
  ['high-flue', 'flueGasC', 'high', [58.6, 58.9]],
  ['high-intake-air', 'intakeAirC', 'high', [11.2]],
  ['high-supply', 'supplyC', 'high', [61.4]],
  ['high-return', 'returnC', 'high', [46.8]],
  ['mid-flue', 'o2DryVolPct', 'mid', [5.2, 5.2]],
  ['mid-flue', 'co2DryVolPct', 'mid', [8.9, 8.9]],
  ['mid-flue', 'coPpm', 'mid', [41, 40]],
  ['mid-flue', 'flueGasC', 'mid', [52.3, 52.1]],
  ['mid-intake-air', 'intakeAirC', 'mid', [11]],
  ['mid-supply', 'supplyC', 'mid', [57.2]],
  ['mid-return', 'returnC', 'mid', [46.1]],
  ['low-flue', 'o2DryVolPct', 'low', [5.8, 5.7]],
  ['low-flue', 'co2DryVolPct', 'low', [8.6, 8.6]],
  ['low-flue', 'coPpm', 'low', [12, 11]],
  ['low-flue', 'flueGasC', 'low', [47.4, 47.2]],
  ['low-intake-air', 'intakeAirC', 'low', [10.8]],
  ['low-supply', 'supplyC', 'low', [52.1]],
  ['low-return', 'returnC', 'low', [45.3]],
  ['intake-o2', 'intakeO2VolPct', null, [20.9]],
  ['room-co-firing', 'roomCoPpm', 'firing', [1]],
  ['inlet-dynamic', 'inletPressureMbarG', 'dynamic', [16.2]],
  ['inlet-all-on', 'inletPressureMbarG', 'dynamic-all-on', [15.4]],
  ['meter-dial', 'meterDialM3', null, [0.0283]],
  ['meter-turns', 'meterTurns', null, [2]],
  ['meter-seconds', 'meterSeconds', null, [81.4]],
  ['heating-value', 'heatingValueMjPerM3', null, [33.54]],
  ['supply-set', 'supplySetpointC', null, [62]],
  ['hot-water-flow', 'hotWaterFlowLPerMin', null, [9.8]],
  ['cold-in', 'coldInletC', null, [8.4]],
  ['hot-out', 'hotOutletC', null, [49.6]],
  ['hot-pressure', 'systemPressureBarG', 'hot', [1.59]],
  ['hot-supply', 'supplyC', 'hot', [61.8]],
];

const NOTES: Readonly<Record<string, string>> = {
  serial: 'TB28-26-004417',
  'vent-material': 'Polypropylene 80/125, maker’s own kit, 6.4 m with three 45° bends',
  flush: 'Flushed twice until clear; cleaner left in for an hour, then drained and filled again',
  treatment: 'Inhibitor for mixed metals, 1 L; dosed at the dirt separator',
  'first-flame-at': '10:21',
  'codes-first-fire': 'none',
  'heating-value-source': 'Tamarack Falls Gas, table for April 2026',
  lockouts: 'none',
  'timers-and-limits': 'Hot water priority 45 min; pump overrun 5 min',
  'safety-lockout-time': 'Flame lost to lockout: 4 s, then three tries',
  'safety-how': 'High limit by lowering it; flow by closing the isolating valve; flame by closing the gas cock',
  'access-needs': 'Mrs. Ærøskøbing-Łukaszewicz is hard of hearing: ring twice; dog in the yard (friendly)',
  'next-service': '2027-04-14',
  'first-year-check': '2026-10-14',
};

export function sampleRun(): RunRecord {
  const sheet = sampleSheet();
  const stepOf = new Map(sheet.startup.flatMap((step) => step.items.map((item) => [item.key, step.key] as const)));
  return {
    runId: SAMPLE_IDS.run,
    kind: 'startup',
    fuel: 'natural-gas',
    startedAt: minutesIn(0),
    site: {
      altitudeM: 1615,
      systemHeightM: 5.2,
      systemVolumeL: 148,
      emitters: ['panel-radiators', 'hot-water-cylinder'],
      fuel: 'natural-gas',
      gasSupplyKind: 'meter',
      meterCompensation: 'none',
      heatingValueMjPerM3: 33.54,
      heatingValueSource: 'Tamarack Falls Gas, April 2026',
      jurisdiction: 'north-america',
      timeZone: 'America/Denver',
      coldWaterC: 8,
    },
    appliance: {
      serial: 'TB28-26-004417',
      maker: 'Tarnbeck',
      model: 'TB 28',
      plateFuel: 'natural-gas',
      tagFuel: 'natural-gas',
      hasConversionRecord: false,
      ratedInputKw: 28,
      ratedInputBasis: 'gross',
    },
    instruments: [
      {
        instrumentId: SAMPLE_IDS.analyser,
        label: 'Flue gas analyser A',
        serial: 'FA-20931',
        kind: 'analyser',
        calibrations: [{ calibratedOn: '2025-11-02', dueOn: '2026-11-02', certificate: 'C-5519' }],
        accuracy: {
          o2DryVolPct: { abs: 0.3, relPct: 0 },
          coPpm: { abs: 5, relPct: 5 },
          flueGasC: { abs: 1, relPct: 1 },
        },
        rangeMax: { coPpm: 4000 },
      },
      {
        instrumentId: SAMPLE_IDS.manometer,
        label: 'Manometer 2',
        serial: 'DM-118',
        kind: 'manometer',
        calibrations: [{ calibratedOn: '2025-03-30', dueOn: '2026-03-30', certificate: 'C-4102' }],
        accuracy: { inletPressureMbarG: { abs: 0.1, relPct: 0.5 } },
        rangeMax: {},
      },
      {
        instrumentId: SAMPLE_IDS.waterKit,
        label: 'Water test case',
        serial: 'WT-7',
        kind: 'water-test',
        calibrations: [],
        accuracy: {},
        rangeMax: {},
      },
    ],
    answers: answers(sheet),
    readings: [...readings(stepOf), notMeasured(stepOf), ...reread(stepOf)],
    holds: [
      { itemKey: 'de-air', startedAt: minutesIn(31), requiredS: 600, endedAt: minutesIn(42), clockJumped: false },
      { itemKey: 'rest', startedAt: minutesIn(43), requiredS: 600, endedAt: minutesIn(54), clockJumped: false },
      {
        itemKey: 'analyser-zero',
        startedAt: minutesIn(96),
        requiredS: 120,
        endedAt: minutesIn(99),
        clockJumped: false,
      },
    ],
    tunings: [
      {
        itemKey: 'tuning-run',
        startedAt: minutesIn(80),
        stages: [
          { stageKey: 'high', reachedAt: minutesIn(82) },
          { stageKey: 'middle', reachedAt: minutesIn(85) },
          { stageKey: 'low', reachedAt: minutesIn(88) },
        ],
        finishedAt: minutesIn(90),
        interruptedAt: null,
        interruptedReason: null,
      },
    ],
    photos: samplePhotos().map(({ itemKey, attachmentId, sha256, takenAt }) => ({
      itemKey,
      attachmentId,
      sha256,
      takenAt,
    })),
    firingPoints: [
      { firingPoint: 'high', reachedAt: minutesIn(100) },
      { firingPoint: 'mid', reachedAt: minutesIn(112) },
      { firingPoint: 'low', reachedAt: minutesIn(124) },
    ],
    signOffs: [
      {
        itemKey: 'licensed-in-charge',
        by: 'licensed',
        name: 'Łukasz Brzęczyszczykiewicz',
        staffId: SAMPLE_IDS.lead,
        at: minutesIn(12),
      },
      {
        itemKey: 'licensed-signs',
        by: 'licensed',
        name: 'Łukasz Brzęczyszczykiewicz',
        staffId: SAMPLE_IDS.lead,
        at: minutesIn(192),
      },
      {
        itemKey: 'occupant-signs',
        by: 'occupant',
        name: 'Åse Ærøskøbing-Łukaszewicz',
        staffId: null,
        at: minutesIn(193),
      },
    ],
    openMakeSafes: 0,
    openNotices: [],
  };
}

function answers(sheet: ModelSheet): RecordedAnswer[] {
  const given: RecordedAnswer[] = [];
  let minute = 2;
  for (const step of sheet.startup) {
    for (const item of step.items) {
      const value = answerTo(item);
      if (value === undefined) continue;
      minute += 0.75;
      given.push({
        itemKey: item.key,
        stepKey: step.key,
        value,
        reason: item.key === 'neutraliser' ? 'No drain of copper downstream; owner will think about one' : null,
        byId: SAMPLE_IDS.lead,
        at: minutesIn(minute),
      });
    }
  }
  return given;
}

function answerTo(item: StepItem): string | undefined {
  if (item.kind === 'confirm') return 'yes';
  if (item.kind === 'choose') return item.options[0]?.value;
  if (item.kind === 'note') return NOTES[item.key];
  if (item.kind === 'witness') return 'Åse Ærøskøbing-Łukaszewicz';
  return undefined;
}

function readings(stepOf: ReadonlyMap<string, string>): RecordedReading[] {
  const minuteOf: Readonly<Record<string, number>> = { high: 106, mid: 118, low: 130 };
  return READ.flatMap(([itemKey, quantity, point, values], row) =>
    values.map((valueOwn, index) => {
      const unit = preferredUnit(quantity, 'us');
      const measuredAt = minutesIn((minuteOf[point ?? ''] ?? 14 + row) + index * 1.5);
      return {
        readingId: `reading-${itemKey}-${quantity}-${index + 1}`,
        visitId: SAMPLE_IDS.visit,
        stepKey: stepOf.get(itemKey) ?? 'unknown',
        itemKey,
        quantity,
        point,
        sample: index + 1,
        typedText: unit.fromOwn(valueOwn).toFixed(quantitySpec(quantity).decimals),
        typedUnit: unit.symbol,
        valueOwn,
        comparator: '=' as const,
        notMeasuredReason: null,
        instrumentId: instrumentFor(quantity),
        measuredById: SAMPLE_IDS.lead,
        typedById: index === 0 ? SAMPLE_IDS.helper : SAMPLE_IDS.lead,
        measuredAt,
        supersededById: null,
        origin: 'typed' as const,
      };
    }),
  );
}

function instrumentFor(quantity: QuantityKey): string | null {
  const { dimension } = quantitySpec(quantity);
  if (dimension === 'gas-pressure') return SAMPLE_IDS.manometer;
  if (quantity.startsWith('water') || dimension === 'hardness' || dimension === 'conductivity')
    return SAMPLE_IDS.waterKit;
  if (dimension === 'share' || dimension === 'ppm' || quantity === 'flueGasC') return SAMPLE_IDS.analyser;
  return null;
}

/** "Not possible, because": a reading without a value. */
function notMeasured(stepOf: ReadonlyMap<string, string>): RecordedReading {
  return {
    readingId: 'reading-burner-pressure',
    visitId: SAMPLE_IDS.visit,
    stepKey: stepOf.get('burner-pressure') ?? 'unknown',
    itemKey: 'burner-pressure',
    quantity: 'burnerPressureMbarG',
    point: 'high',
    sample: 1,
    typedText: '',
    typedUnit: '',
    valueOwn: null,
    comparator: '=',
    notMeasuredReason: 'The maker’s sheet asks for none on this model',
    instrumentId: null,
    measuredById: SAMPLE_IDS.lead,
    typedById: SAMPLE_IDS.lead,
    measuredAt: minutesIn(150),
    supersededById: null,
    origin: 'typed',
  };
}

/** One reading was put right on the spot: the original stays beside what replaced it. */
function reread(stepOf: ReadonlyMap<string, string>): RecordedReading[] {
  const unit = entryUnits('systemPressureBarG')[0];
  return [
    {
      readingId: 'reading-hot-pressure-first',
      visitId: SAMPLE_IDS.visit,
      stepKey: stepOf.get('hot-pressure') ?? 'unknown',
      itemKey: 'hot-pressure',
      quantity: 'systemPressureBarG',
      point: 'hot',
      sample: 1,
      typedText: '2.6',
      typedUnit: unit.symbol,
      valueOwn: 2.6,
      comparator: '=',
      notMeasuredReason: null,
      instrumentId: null,
      measuredById: SAMPLE_IDS.lead,
      typedById: SAMPLE_IDS.lead,
      measuredAt: minutesIn(170),
      supersededById: 'reading-hot-pressure-systemPressureBarG-1',
      origin: 'typed',
    },
  ];
}

/** Findings of every verdict, as the judgement gives them. */
export function sampleFindings(): readonly Finding[] {
  const sheet = { sheetId: 'tarnbeck-tb-28', revision: '2026-03' };
  const maker = { kind: 'maker', source: 'Installation manual TB-28, section 9' } as const;
  const practice = { kind: 'common-practice', source: 'usually under 100 ppm, often under 30' } as const;
  const judged = (
    readingId: string,
    quantity: QuantityKey,
    point: string | null,
    verdict: Verdict,
    min: number | null,
    max: number | null,
    more: Partial<Finding> = {},
  ): Finding => ({
    readingId,
    subject: quantity,
    verdict,
    proof: { proven: true },
    blocks: verdict === 'outside' ? ['registration'] : [],
    basis: {
      limit: min === null && max === null ? null : { quantity, point, min, max, severity: 'outside' },
      from: min === null && max === null ? 'none' : 'sheet',
      source: min === null && max === null ? null : quantity === 'coPpm' ? practice : maker,
      sheet: min === null && max === null ? null : sheet,
      formula: null,
      inputs: {},
    },
    suggestions: [],
    missing: [],
    makeSafe: [],
    ...more,
  });
  const flue = (['high', 'mid', 'low'] as const).flatMap((point) => [
    judged(`reading-${point}-flue-o2DryVolPct-2`, 'o2DryVolPct', point, 'within', 3.9, 6),
    judged(`reading-${point}-flue-co2DryVolPct-2`, 'co2DryVolPct', point, 'within', point === 'low' ? 7.7 : 8.5, 9.7),
    judged(`reading-${point}-flue-coPpm-2`, 'coPpm', point, point === 'high' ? 'near-the-edge' : 'within', null, 100),
  ]);
  return [
    ...flue,
    judged('reading-inlet-static-inletPressureMbarG-1', 'inletPressureMbarG', 'static', 'within', 9.96, 34.88, {
      proof: { proven: false, because: ['instrument-out-of-date'] },
    }),
    judged('reading-inlet-dynamic-inletPressureMbarG-1', 'inletPressureMbarG', 'dynamic', 'within', 9.96, 34.88, {
      proof: { proven: false, because: ['instrument-out-of-date'] },
    }),
    judged('reading-system-chloride-chlorideMgPerL-1', 'chlorideMgPerL', 'after', 'outside', null, 150),
    judged('reading-hot-pressure-systemPressureBarG-1', 'systemPressureBarG', 'hot', 'near-the-edge', null, 1.86),
    judged('reading-flame-current-flameCurrentUa-1', 'flameCurrentUa', null, 'no-limit-on-sheet', null, null),
    judged('reading-room-co-roomCoPpm-1', 'roomCoPpm', 'before', 'within', null, 9),
    {
      ...judged('reading-meter-seconds-meterSeconds-1', 'meterSeconds', null, 'cannot-tell-apart', null, null),
      subject: 'clocked-input',
      basis: {
        limit: null,
        from: 'sheet',
        source: maker,
        sheet,
        formula: 'input = 3600 × turns × dial ÷ seconds × heating value × volume factor',
        inputs: {
          meterTurns: 2,
          meterDialM3: 0.0283,
          meterSeconds: 81.4,
          heatingValueMjPerM3: 33.54,
          volumeFactor: 0.987,
        },
        result: { value: 23.02, unit: 'kW', plusMinus: 0.4 },
      },
    },
    {
      ...judged('', 'waterPh', null, 'cannot-judge', null, null),
      readingId: null,
      subject: 'condensation',
      missing: ['return temperature at design load'],
    },
  ];
}

/** A flue reading far over its stop limit, for the pages that must shout. */
export function sampleStop(): Finding {
  return {
    readingId: 'reading-low-flue-coPpm-2',
    subject: 'coAirFreePpm',
    verdict: 'stop',
    proof: { proven: true },
    blocks: ['firing', 'leaving', 'registration'],
    basis: {
      limit: { quantity: 'coAirFreePpm', point: 'low', min: null, max: 400, severity: 'stop' },
      from: 'ceiling',
      source: { kind: 'standard', source: 'ANSI Z21.13: 400 ppm CO air-free for vented appliances' },
      sheet: null,
      formula: 'CO air-free = CO × 20.9 ÷ (20.9 − O₂)',
      inputs: { coPpm: 310, o2DryVolPct: 6.1 },
      result: { value: 437.8, unit: 'ppm', plusMinus: 24 },
    },
    suggestions: [],
    missing: [],
    makeSafe: ['Burner off, gas cock closed', 'Label the appliance', 'Tell the occupant and write down whom'],
  };
}

export function sampleComputed(): readonly ComputedValue[] {
  return [
    {
      key: 'clocked-input',
      label: 'Clocked input, gross',
      point: 'high',
      value: 23.0186,
      unit: 'kW',
      decimals: 1,
      plusMinus: 0.4,
      formula: '3600 × turns × dial ÷ seconds × heating value × volume factor',
      inputs: {
        meterTurns: 2,
        meterDialM3: 0.0283,
        meterSeconds: 81.4,
        heatingValueMjPerM3: 33.54,
        volumeFactor: 0.987,
      },
      source: 'meter timing',
      missing: [],
    },
    {
      key: 'site-rating',
      label: 'Rated input at this altitude, gross',
      point: null,
      value: 22.066,
      unit: 'kW',
      decimals: 1,
      plusMinus: null,
      formula: 'rated input × (1 − 4 % × altitude in 1000 ft)',
      inputs: { ratedInputKw: 28, altitudeM: 1615 },
      source: 'Installation manual TB-28, section 9',
      missing: [],
    },
    {
      key: 'excess-air',
      label: 'Excess air',
      point: 'high',
      value: 27.43,
      unit: '%',
      decimals: 0,
      plusMinus: 2,
      formula: 'λ from O₂ and the fuel’s dry flue gas',
      inputs: { o2DryVolPct: 4.8 },
      source: null,
      missing: [],
    },
    {
      key: 'co-air-free',
      label: 'CO air-free',
      point: 'high',
      value: 106.45,
      unit: 'ppm',
      decimals: 0,
      plusMinus: 7,
      formula: 'CO × 20.9 ÷ (20.9 − O₂)',
      inputs: { coPpm: 82, o2DryVolPct: 4.8 },
      source: null,
      missing: [],
    },
    {
      key: 'delta-t',
      label: 'Supply minus return',
      point: 'high',
      value: 14.6,
      unit: 'K',
      decimals: 1,
      plusMinus: 0.7,
      formula: 'supply − return',
      inputs: { supplyC: 61.4, returnC: 46.8 },
      source: null,
      missing: [],
    },
    {
      key: 'condensing-share',
      label: 'Share of the year that condenses',
      point: null,
      value: null,
      unit: '%',
      decimals: 0,
      plusMinus: null,
      formula: 'return below dew point over the heating curve',
      inputs: {},
      source: null,
      missing: ['return temperature at design load'],
    },
  ];
}

export type SamplePhoto = {
  readonly itemKey: string;
  readonly attachmentId: string;
  readonly sha256: string;
  readonly takenAt: string;
  readonly mediaType: string;
  readonly fileName: string;
  readonly bytes: Uint8Array;
};

export function samplePhotos(): readonly SamplePhoto[] {
  const wave = (column: number, row: number): number => 128 + 100 * Math.sin(column / 3) * Math.cos(row / 4);
  const plate = (column: number, row: number): number => (row % 4 === 1 && column > 2 && column < 21 ? 40 : 215);
  const vent = (column: number, row: number): number => 60 + 7 * Math.hypot(column - 12, row - 9);
  const made: readonly (readonly [string, string, Uint8Array])[] = [
    ['plate-photo', 'image/jpeg', grayMosaicJpeg({ tilesAcross: 24, tilesDown: 18, gray: plate })],
    [
      'vent-end-photo',
      'image/jpeg',
      grayMosaicJpeg({ tilesAcross: 24, tilesDown: 18, gray: vent, segments: [exifSegment(6)] }),
    ],
    ['whole-photo', 'image/jpeg', grayMosaicJpeg({ tilesAcross: 30, tilesDown: 20, gray: wave })],
    [
      'condensate-photo',
      'image/png',
      stripedPng(120, 90, 15, [
        [90, 120, 105],
        [220, 215, 200],
      ]),
    ],
    [
      'high-analyser-photo',
      'image/png',
      stripedPng(90, 120, 10, [
        [40, 45, 50],
        [200, 205, 190],
      ]),
    ],
    [
      'low-analyser-photo',
      'image/png',
      stripedPng(90, 120, 12, [
        [50, 45, 40],
        [190, 205, 200],
      ]),
    ],
  ];
  return made.map(([itemKey, mediaType, bytes], index) => ({
    itemKey,
    attachmentId: `01970000-0000-7000-8000-00000000e1${String(index).padStart(2, '0')}`,
    sha256: createHash('sha256').update(bytes).digest('hex'),
    takenAt: minutesIn(5 + index * 20),
    mediaType,
    fileName: `${itemKey}.${mediaType === 'image/png' ? 'png' : 'jpg'}`,
    bytes,
  }));
}

const US = { region: 'Colorado', country: 'US' } as const;

export function sampleRecordInput(changes: Partial<RecordInput> = {}): RecordInput {
  return {
    language: 'en',
    unitSystem: 'us',
    company: {
      name: 'Harrow Creek Heating',
      street: '12 Foundry Lane',
      postcode: '00112',
      city: 'Tamarack Falls',
      ...US,
      phone: '555-0140',
      email: 'office@harrowcreek.example',
      licenceNumber: 'MC-10442',
      timeZone: 'America/Denver',
      unitSystem: 'us',
      language: 'en',
      jurisdiction: 'north-america',
      emergencyNumber: '555-0199',
    },
    job: { jobId: SAMPLE_IDS.job, kind: 'startup' },
    visit: {
      visitId: SAMPLE_IDS.visit,
      on: '2026-04-14',
      startedAt: minutesIn(0),
      finishedAt: minutesIn(195),
      outcome: 'finished',
      labourMin: 195,
    },
    crew: [
      {
        staffId: SAMPLE_IDS.lead,
        name: 'Łukasz Brzęczyszczykiewicz',
        role: 'lead',
        licences: [
          {
            number: 'GF-2231-B',
            issuer: 'State Board of Mechanical Trades',
            place: 'Colorado',
            licenceClass: 'Gas fitter B, to 117 kW',
            fuel: null,
            maxKw: 117,
            validFrom: '2024-01-01',
            validTo: '2026-12-31',
          },
        ],
        trainings: [
          { maker: 'Tarnbeck', modelLine: 'TB', number: 'T-5512', validFrom: '2025-02-11', validTo: '2028-02-11' },
        ],
      },
      { staffId: SAMPLE_IDS.helper, name: 'Noor van der Zwaluw', role: 'helper', licences: [], trainings: [] },
    ],
    parties: sampleParties(),
    subjectPartyId: SAMPLE_IDS.owner,
    site: {
      siteId: SAMPLE_IDS.site,
      label: 'House',
      street: '4 Larch Hollow Road',
      postcode: '00119',
      city: 'Tamarack Falls',
      ...US,
      latitude: null,
      longitude: null,
      jurisdiction: 'north-america',
      timeZone: 'America/Denver',
      buildingKind: 'home',
      access: 'Side door, ring twice',
      altitudeM: 1615,
      systemHeightM: 5.2,
      systemVolumeL: 148,
      systemVolumeHow: 'metered',
      coldWaterC: 8,
      glycolKind: null,
      emitters: [
        { emitter: 'panel-radiators', zone: 'upstairs', ratedKw: 11 },
        { emitter: 'hot-water-cylinder', zone: null, ratedKw: null },
      ],
    },
    gasSupply: {
      kind: 'meter',
      fuel: 'natural-gas',
      number: 'M-88213',
      dialM3: 0.0283,
      compensation: 'none',
      capacityM3PerH: 7.1,
      regulator: 'service regulator at the meter',
      nominalMbarG: 17.4,
      tankVolumeL: null,
      heatingValueMjPerM3: 33.54,
      heatingValueTyped: '900 Btu/ft³',
      heatingValueSource: 'Tamarack Falls Gas, April 2026',
      heatingValueOn: '2026-04-01',
      loads: [{ name: 'Cooker', inputKw: 14, applianceId: null }],
    },
    appliance: {
      applianceId: SAMPLE_IDS.appliance,
      serial: 'TB28-26-004417',
      maker: 'Tarnbeck',
      model: 'TB 28',
      sheetId: 'tarnbeck-tb-28',
      plateFuel: 'natural-gas',
      tagFuel: 'natural-gas',
      ratedInputKw: 28,
      ratedInputBasis: 'gross',
      ventKind: 'polypropylene 80/125',
      ventLengthM: 6.4,
      ventElbows: 3,
      isVentConcealed: false,
      note: null,
      position: 'Basement, north wall',
      dates: [
        { kind: 'made', on: '2026-01-01', precision: 'month', source: 'rating plate' },
        { kind: 'sold', on: '2026-03-20', precision: 'day', source: 'invoice 88-1042' },
        { kind: 'installed', on: '2026-04-09', precision: 'day', source: 'fitter' },
        { kind: 'started', on: '2026-04-14', precision: 'day', source: 'this startup' },
        { kind: 'occupied', on: '2026-02-01', precision: 'month', source: 'owner' },
      ],
      fuelState: { fuel: 'natural-gas', fromOn: '2026-04-14', conversionKit: null, orifice: '5.2', proof: null },
    },
    permits: [{ number: 'TF-2026-0331', issuer: 'Tamarack Falls building office', state: 'issued', on: '2026-04-02' }],
    sheet: sampleSheet(),
    steps: 'startup',
    run: sampleRun(),
    findings: sampleFindings(),
    computed: sampleComputed(),
    ...changes,
  };
}

function sampleParties(): RecordInput['parties'] {
  const nobody = { contactName: null, language: null, email: null, phoneTyped: null, note: null } as const;
  const nowhere = { street: null, postcode: null, city: null, region: null, country: null } as const;
  return [
    {
      partyId: SAMPLE_IDS.owner,
      party: {
        ...nobody,
        kind: 'person',
        name: 'Åse Ærøskøbing-Łukaszewicz',
        language: 'en',
        email: 'ase@example.org',
        phoneTyped: '555-0166',
        street: '4 Larch Hollow Road',
        postcode: '00119',
        city: 'Tamarack Falls',
        ...US,
      },
      roles: ['owner', 'occupant', 'payer'],
      consents: [
        { purpose: 'registration', channel: 'e-mail', granted: true, on: '2026-04-14' },
        { purpose: 'service-due', channel: 'e-mail', granted: true, on: '2026-04-14' },
        { purpose: 'offers', channel: 'e-mail', granted: false, on: '2026-04-14' },
      ],
    },
    {
      partyId: SAMPLE_IDS.builder,
      party: {
        ...nobody,
        ...nowhere,
        kind: 'firm',
        name: 'Quillfeather & Sons Piping',
        contactName: 'Ib Quillfeather',
      },
      roles: ['fitter'],
      consents: [],
    },
    {
      partyId: SAMPLE_IDS.supplier,
      party: { ...nobody, ...nowhere, kind: 'firm', name: 'Long Meadow Supply', city: 'Tamarack Falls' },
      roles: ['supplier'],
      consents: [],
    },
  ];
}

export function sampleSeal(changes: Partial<SealPosition> = {}): SealPosition {
  return {
    sequence: 1,
    kind: 'sealed',
    previousSha256: null,
    amends: null,
    sealedAt: minutesIn(200),
    sealedById: SAMPLE_IDS.lead,
    ...changes,
  };
}

/** Repeatable salts, for tests only: real ones are random. */
export function sampleSalts(seed = 'sample'): () => string {
  let count = 0;
  return () => {
    count += 1;
    return createHash('sha256').update(`${seed}-${count}`).digest('hex').slice(0, 32);
  };
}
