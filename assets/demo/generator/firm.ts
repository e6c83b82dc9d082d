/** The invented firm: who works there, what they measure with, and whom they buy from. */
import { Temporal } from 'temporal-polyfill';
import type { ModelSheet } from '../../../domain/procedure/modelSheet.ts';
import type { Scenario } from '../../../electron/demo/scenario.ts';

export const ANCHOR = Temporal.PlainDate.from('2026-03-02');

export const people = (makersSheets: readonly ModelSheet[]): Scenario['people'] => [
  { ...officePerson('owner', 'Maren Oduya', 'MO'), roles: ['owner', 'dispatcher'] },
  { ...officePerson('dispatcher', 'Pascal Windermoor', 'PW'), roles: ['dispatcher'] },
  {
    key: 'tobias',
    name: 'Tobias Reyle',
    initials: 'TR',
    roles: ['technician'],
    licences: [licence('G2-88120', 'G2', null, 117, -900, 640)],
    trainings: makersTrainings(makersSheets, 'TR', -700),
    hours: weekdays([1, 2, 3, 4, 5], 480, 1020, 720),
    skills: ['ladder'],
    base: at('14 Kelp Lane', 'B4T 3C2', 'Graven Bay', 44.618, -64.031),
  },
  {
    key: 'ingrid',
    name: 'Ingrid Sørlund',
    initials: 'IS',
    roles: ['technician'],
    licences: [licence('G1-20417', 'G1', null, null, -1200, 410)],
    trainings: makersTrainings(makersSheets, 'IS', -900),
    hours: weekdays([1, 2, 3, 4, 5], 450, 990, 720),
    skills: ['cascade', 'ladder', 'propane tank'],
    base: at('5 Millrace Road', 'B4R 1B8', 'Farrow Mills', 44.702, -63.886),
  },
  {
    key: 'felix',
    name: 'Félix Aubertin',
    initials: 'FA',
    roles: ['technician'],
    licences: [licence('G2-90233', 'G2', 'natural-gas', 117, -1100, 21)],
    trainings: makersTrainings(makersSheets, 'FA', -400).slice(0, 2),
    hours: weekdays([1, 2, 3, 4, 5], 480, 1020, 720),
    skills: [],
    base: at('27 Beacon Way', 'B4V 2A5', 'Tidewick', 44.546, -64.202),
  },
  {
    ...officePerson('ines', 'Ines Calloway', 'IC'),
    roles: ['helper'],
    hours: weekdays([1, 2, 3, 4], 480, 960, 720),
    skills: ['ladder'],
  },
];
export const absences: Scenario['absences'] = [
  { personKey: 'felix', fromWorkingDay: 3, toWorkingDay: 3, reason: 'maker’s course' },
  { personKey: 'ines', fromWorkingDay: 6, toWorkingDay: 8, reason: 'holiday' },
];
const analyserAccuracy = {
  o2DryVolPct: { abs: 0.3, relPct: 0 },
  co2DryVolPct: { abs: 0.3, relPct: 0 },
  coPpm: { abs: 5, relPct: 5 },
  flueGasC: { abs: 1, relPct: 0.5 },
};
export const instruments: Scenario['instruments'] = [
  {
    key: 'analyser-1',
    kind: 'analyser',
    label: 'Analyser 1',
    serial: 'A-1001',
    keptByKey: 'tobias',
    accuracy: analyserAccuracy,
    rangeMax: { coPpm: 4000 },
    calibrations: yearly(-1100, 4, 'A1'),
  },
  {
    key: 'analyser-2',
    kind: 'analyser',
    label: 'Analyser 2',
    serial: 'A-1002',
    keptByKey: 'ingrid',
    accuracy: analyserAccuracy,
    rangeMax: { coPpm: 4000 },
    calibrations: yearly(-1130, 3, 'A2'),
  },
  {
    key: 'analyser-3',
    kind: 'analyser',
    label: 'Analyser 3',
    serial: 'A-1003',
    keptByKey: 'felix',
    accuracy: analyserAccuracy,
    rangeMax: { coPpm: 4000 },
    calibrations: yearly(-430, 2, 'A3'),
  },
  {
    key: 'manometer',
    kind: 'manometer',
    label: 'Manometer',
    serial: 'M-310',
    keptByKey: null,
    accuracy: { inletPressureMbarG: { abs: 0.1, relPct: 0.5 } },
    rangeMax: {},
    calibrations: yearly(-1100, 4, 'M3'),
  },
  {
    key: 'manometer-2',
    kind: 'manometer',
    label: 'Manometer 2',
    serial: 'M-311',
    keptByKey: 'ingrid',
    accuracy: { inletPressureMbarG: { abs: 0.1, relPct: 0.5 } },
    rangeMax: {},
    calibrations: yearly(-730, 3, 'M4'),
  },
  {
    key: 'manometer-3',
    kind: 'manometer',
    label: 'Manometer 3',
    serial: 'M-312',
    keptByKey: 'felix',
    accuracy: { inletPressureMbarG: { abs: 0.1, relPct: 0.5 } },
    rangeMax: {},
    calibrations: yearly(-400, 2, 'M5'),
  },
  {
    key: 'thermometer',
    kind: 'thermometer',
    label: 'Pipe thermometer',
    serial: 'T-077',
    keptByKey: null,
    accuracy: { supplyC: { abs: 0.5, relPct: 0 }, returnC: { abs: 0.5, relPct: 0 } },
    rangeMax: {},
    calibrations: yearly(-1110, 4, 'T7'),
  },
  {
    key: 'water-test',
    kind: 'water-test',
    label: 'Water test kit',
    serial: 'W-204',
    keptByKey: null,
    accuracy: { waterPh: { abs: 0.1, relPct: 0 } },
    rangeMax: {},
    calibrations: yearly(-1095, 4, 'W2'),
  },
  {
    key: 'multimeter',
    kind: 'multimeter',
    label: 'Multimeter',
    serial: 'V-512',
    keptByKey: null,
    accuracy: {},
    rangeMax: {},
    calibrations: yearly(-1105, 4, 'V5'),
  },
  {
    key: 'stopwatch',
    kind: 'stopwatch',
    label: 'Stopwatch',
    serial: 'S-018',
    keptByKey: null,
    accuracy: {},
    rangeMax: {},
    calibrations: yearly(-1120, 4, 'S1'),
  },
];

export const tradeParties: Scenario['tradeParties'] = [
  tradeParty('fitter', 'Corrie Pipe & Boiler', '11 Beacon Way', '902 555 0177'),
  tradeParty('supplier', 'Bay Plumbing Supply', '2 Quay Road', '902 555 0126'),
];

function officePerson(key: string, name: string, initials: string): Omit<Scenario['people'][number], 'roles'> {
  return { key, name, initials, licences: [], trainings: [], hours: [], skills: [], base: null };
}

function weekdays(days: readonly number[], fromMin: number, toMin: number, breakFromMin: number) {
  return days.map((weekday) => ({ weekday, fromMin, toMin, breakFromMin, breakToMin: breakFromMin + 30 }));
}

function at(street: string, postcode: string, city: string, latitude: number, longitude: number) {
  return { street, postcode, city, latitude, longitude };
}

/** One course for each maker's line, without end. */
function makersTrainings(
  makersSheets: readonly ModelSheet[],
  initials: string,
  fromDays: number,
): Scenario['people'][number]['trainings'] {
  const lines = new Map(
    makersSheets.flatMap((sheet) =>
      sheet.models.map((model) => [`${sheet.maker} ${model.split(' ')[0]}`, { sheet, model }]),
    ),
  );
  return [...lines.values()].map(({ sheet, model }, index) => ({
    maker: sheet.maker ?? '',
    modelLine: model.split(' ')[0] ?? model,
    number: `${initials}-${510 + index}`,
    validFrom: ANCHOR.add({ days: fromDays }).toString(),
    validTo: null,
  }));
}

function licence(
  number: string,
  licenceClass: string,
  fuel: 'natural-gas' | 'propane' | null,
  maxKw: number | null,
  fromDays: number,
  toDays: number,
): Scenario['people'][number]['licences'][number] {
  return {
    number,
    issuer: 'Provincial gas board',
    place: 'Nova Scotia',
    licenceClass,
    fuel,
    maxKw,
    validFrom: ANCHOR.add({ days: fromDays }).toString(),
    validTo: ANCHOR.add({ days: toDays }).toString(),
  };
}

function yearly(firstDays: number, count: number, prefix: string): Scenario['instruments'][number]['calibrations'] {
  return Array.from({ length: count }, (_, year) => {
    const on = ANCHOR.add({ days: firstDays + year * 360 });
    return {
      calibratedOn: on.toString(),
      dueOn: on.add({ years: 1 }).toString(),
      certificate: `${prefix}-${year + 1}`,
    };
  });
}

function tradeParty(key: string, name: string, street: string, phoneTyped: string): Scenario['tradeParties'][number] {
  return {
    key,
    party: {
      kind: 'firm',
      name,
      contactName: null,
      language: 'en',
      email: `office@${key}.example`,
      phoneTyped,
      street,
      postcode: 'B4V 2A2',
      city: 'Tidewick',
      region: null,
      country: 'CA',
      note: null,
    },
  };
}
