/**
 * Makes assets/demo/scenario.json: an invented firm, 40 customers, 60 appliances and three years of visits. Same seed, same
 * file. Usage: npm run demo:generate
 */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Temporal } from 'temporal-polyfill';
import type { ModelSheet } from '../../domain/procedure/modelSheet.ts';
import { parseModelSheet } from '../../domain/procedure/parseModelSheet.ts';
import { unwrap } from '../../domain/result.ts';
import { foldForSearch } from '../../domain/text/foldForSearch.ts';
import type { RecordedRun } from '../../electron/demo/recordedRun.ts';
import { type Scenario, scenario } from '../../electron/demo/scenario.ts';
import { consentsOf } from './generator/consents.ts';
import { FAULTS, type Fault } from './generator/faults.ts';
import { writeNotes } from './generator/notes.ts';
import { agreements, claims, mailings, recalls } from './generator/officeWork.ts';
import { seeded } from './generator/random.ts';
import { type BoilerFacts, visitTruth } from './generator/truth.ts';
import { FAMILY_NAMES, FIRMS, GIVEN_NAMES, STREETS, TOWNS } from './generator/words.ts';

const SEED = 20260302;
const ANCHOR = Temporal.PlainDate.from('2026-03-02');
const CUSTOMERS = 40;
const APPLIANCES = 60;
const FIRST_VISIT_DAYS_AGO = 1090;

const random = seeded(SEED);
const root = new URL('../..', import.meta.url).pathname;
const sheets = readdirSync(join(root, 'assets/sheets'))
  .sort()
  .map((name) => unwrap(parseModelSheet(JSON.parse(readFileSync(join(root, 'assets/sheets', name), 'utf8')))));
const makersSheets = sheets.filter((sheet) => sheet.maker !== null);

type Boiler = {
  readonly key: string;
  readonly customerIndex: number;
  readonly facts: BoilerFacts;
  readonly serial: string;
  readonly startedDaysAgo: number;
  readonly occupant: string;
};

const people: Scenario['people'] = [
  { ...officePerson('owner', 'Maren Oduya', 'MO'), roles: ['owner', 'dispatcher'] },
  { ...officePerson('dispatcher', 'Pascal Windermoor', 'PW'), roles: ['dispatcher'] },
  {
    key: 'tobias',
    name: 'Tobias Reyle',
    initials: 'TR',
    roles: ['technician'],
    licences: [licence('G2-88120', 'G2', null, 117, -900, 640)],
    trainings: makersTrainings('TR', -700),
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
    trainings: makersTrainings('IS', -900),
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
    trainings: makersTrainings('FA', -400).slice(0, 2),
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
const absences: Scenario['absences'] = [
  { personKey: 'felix', fromWorkingDay: 3, toWorkingDay: 3, reason: 'maker’s course' },
  { personKey: 'ines', fromWorkingDay: 6, toWorkingDay: 8, reason: 'holiday' },
];
const technicians = ['tobias', 'ingrid', 'felix'];

const analyserAccuracy = {
  o2DryVolPct: { abs: 0.3, relPct: 0 },
  co2DryVolPct: { abs: 0.3, relPct: 0 },
  coPpm: { abs: 5, relPct: 5 },
  flueGasC: { abs: 1, relPct: 0.5 },
};
const instruments: Scenario['instruments'] = [
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
    calibrations: yearly(-1000, 3, 'M3'),
  },
];

const tradeParties: Scenario['tradeParties'] = [
  tradeParty('fitter', 'Corrie Pipe & Boiler', '11 Beacon Way'),
  tradeParty('supplier', 'Bay Plumbing Supply', '2 Quay Road'),
];

const boilers: Boiler[] = [];
const customers = Array.from({ length: CUSTOMERS }, (_, index) => makeCustomer(index));
const visits: Scenario['visits'] = [];
const registrations: Scenario['registrations'] = [];
const makeSafes: Scenario['makeSafes'] = [];
const openJobs: Scenario['openJobs'] = [];
for (const [index, boiler] of boilers.entries()) addHistory(boiler, index);
const upcoming = bookServices();
openJobs.push(...waitingServices());

const made: Scenario = scenario.parse({
  anchorOn: ANCHOR.toString(),
  company: {
    name: 'Kittiwake Heating',
    street: '3 Slipway Road',
    postcode: 'B4T 2K1',
    city: 'Graven Bay',
    region: null,
    country: 'CA',
    phone: '902 555 0142',
    email: 'office@kittiwake.example',
    licenceNumber: 'GH-2041',
    timeZone: 'America/Halifax',
    unitSystem: 'metric',
    language: 'en',
    jurisdiction: 'north-america',
    emergencyNumber: '902 555 0199',
  },
  travel: { latitude: 44.6105, longitude: -64.0195, roadFactor: null, speedKmPerH: null },
  people,
  absences,
  instruments,
  tradeParties,
  customers,
  visits,
  upcoming,
  wastedTrips: wasteTrips(),
  openJobs,
  registrations,
  makeSafes,
  agreements: agreements(ANCHOR),
  claims: claims(ANCHOR),
  recalls: recalls(ANCHOR),
  mailings: mailings(ANCHOR),
});
const waiting = boilers.find((boiler) =>
  visits.some((visit) => visit.applianceKey === boiler.key && !visit.isDone && !visit.isPencilled),
);
if (waiting === undefined) throw new Error('no startup is waiting to be run');
// The startup that the demo command runs: of a boiler that is booked and not yet started.
writeFileSync(join(root, 'assets/demo/startup-run.json'), `${JSON.stringify(startupNotes(waiting), null, 1)}\n`);
writeFileSync(join(root, 'assets/demo/scenario.json'), `${JSON.stringify(made)}\n`);
process.stdout.write(
  `${made.customers.length} customers, ${boilers.length} appliances, ${made.visits.length} visits, ${made.registrations.length} registrations\n`,
);

function makeCustomer(index: number): Scenario['customers'][number] {
  const town = random.pick(TOWNS);
  const isFirm = index % 7 === 6;
  const name = isFirm
    ? (FIRMS[Math.floor(index / 7) % FIRMS.length] ?? 'Tern Island Lodge')
    : `${GIVEN_NAMES[index % GIVEN_NAMES.length]} ${FAMILY_NAMES[(index * 7 + 3) % FAMILY_NAMES.length]}`;
  const street = `${random.integer(1, 120)} ${random.pick(STREETS)}`;
  const postcode = `${town.postcode} ${random.integer(1, 9)}A${random.integer(1, 9)}`;
  const since = ANCHOR.subtract({ days: random.integer(1100, 2400) });
  const left = APPLIANCES - boilers.length;
  const wanted = isFirm
    ? Math.min(left - (CUSTOMERS - index - 1), 4 + (Math.floor(index / 7) % 2))
    : Math.min(left - (CUSTOMERS - index - 1), index % 9 === 4 ? 2 : 1);
  const fuel = town.city === 'Upper Corrie' ? 'propane' : 'natural-gas';
  const hasFloor = index % 5 === 2;
  const systemHeightM = isFirm ? random.integer(7, 11) : random.integer(3, 7);
  const appliances = Array.from({ length: Math.max(1, wanted) }, (__, position) =>
    makeBoiler(index, position, fuel, hasFloor, systemHeightM, name),
  );
  const party = {
    kind: isFirm ? ('firm' as const) : ('person' as const),
    name,
    contactName: isFirm ? 'Building manager' : null,
    language: index % 11 === 3 ? ('fr' as const) : ('en' as const),
    email: index % 6 === 5 ? null : `${foldForSearch(name).replaceAll(' ', '.')}@mail.example`,
    phoneTyped: `902 555 ${String(1000 + index * 37).slice(-4)}`,
    street,
    postcode,
    city: town.city,
    region: null,
    country: 'CA',
    note: null,
  };
  return {
    key: `customer-${index}`,
    since: since.toString(),
    party,
    consents: consentsOf(index, since, ANCHOR),
    sites: [
      {
        key: `site-${index}`,
        site: {
          label: isFirm ? 'Plant room' : null,
          street,
          postcode,
          city: town.city,
          region: null,
          country: 'CA',
          latitude: town.latitude + random.noise(0.01),
          longitude: town.longitude + random.noise(0.01),
          jurisdiction: 'north-america',
          timeZone: 'America/Halifax',
          buildingKind: isFirm ? 'commercial' : random.pick(['home', 'home', 'new-build', 'rental']),
          access: index % 3 === 0 ? 'key with the neighbour, dog in the yard' : null,
          altitudeM: Math.round(town.altitudeM + random.noise(8)),
          systemHeightM,
          systemVolumeL: isFirm ? random.integer(400, 900) : random.integer(70, 180),
          systemVolumeHow: 'estimated',
          coldWaterC: 8,
          glycolKind: null,
          emitters: hasFloor
            ? [
                { emitter: 'floor-slab', zone: 'ground floor', ratedKw: 6 },
                { emitter: 'panel-radiators', zone: 'upstairs', ratedKw: 8 },
              ]
            : [
                {
                  emitter: index % 3 === 0 ? 'fin-tube-baseboard' : 'panel-radiators',
                  zone: 'whole house',
                  ratedKw: 14,
                },
              ],
        },
        gasSupply: {
          kind: fuel === 'propane' ? 'tank' : 'meter',
          fuel,
          number: fuel === 'propane' ? null : `M-${7000 + index}`,
          dialM3: fuel === 'propane' ? null : isFirm ? 0.1 : 0.01,
          compensation: fuel === 'propane' ? null : 'temperature',
          capacityM3PerH: fuel === 'propane' ? null : isFirm ? 40 : 7.1,
          regulator: fuel === 'propane' ? 'two stages' : 'one stage',
          nominalMbarG: fuel === 'propane' ? 30 : 18.8,
          tankVolumeL: fuel === 'propane' ? 1900 : null,
          heatingValueMjPerM3: fuel === 'propane' ? 95.6 : 38,
          heatingValueTyped: fuel === 'propane' ? '95.6 MJ/m³' : '38 MJ/m³',
          heatingValueSource: 'utility, monthly mean',
          heatingValueOn: ANCHOR.subtract({ months: 1 }).toString(),
          loads: [{ name: 'cooker', inputKw: 12, applianceId: null }],
        },
        // One site in eight still lacks them: packets with gaps are part of the demo.
        roles:
          index % 8 === 7
            ? []
            : [
                { partyKey: 'fitter', role: 'fitter' },
                { partyKey: 'supplier', role: 'supplier' },
              ],
        permits:
          index % 8 === 7
            ? []
            : [
                {
                  number: `P-${2000 + index}`,
                  issuer: 'Municipal building office',
                  state: 'inspected',
                  on: since.toString(),
                },
              ],
        appliances,
      },
    ],
  };
}

function makeBoiler(
  customerIndex: number,
  position: number,
  fuel: 'natural-gas' | 'propane',
  hasFloor: boolean,
  systemHeightM: number,
  occupant: string,
): Scenario['customers'][number]['sites'][number]['appliances'][number] {
  const fitting = makersSheets.filter((sheet) => sheet.fuels.some((one) => one.fuel === fuel));
  const index = boilers.length;
  const sheet = fitting[index % fitting.length];
  if (sheet === undefined) throw new Error(`no sheet for ${fuel}`);
  const model = sheet.models[index % sheet.models.length] ?? sheet.title;
  const ratedInputKw = sheet.appliance.ratedInputMaxKw ?? 24;
  const serial = makeSerial(sheet, index);
  const startedDaysAgo =
    index < 3
      ? index * 9 + 4
      : index >= APPLIANCES - 5
        ? -1
        : Math.round(FIRST_VISIT_DAYS_AGO - (index / APPLIANCES) * 1040);
  const hotWater = sheet.appliance.hotWater === 'any' ? 'none' : sheet.appliance.hotWater;
  boilers.push({
    key: `boiler-${index}`,
    customerIndex,
    serial,
    startedDaysAgo,
    occupant,
    facts: {
      sheet,
      fuel,
      ratedInputKw,
      heatingValueMjPerM3: fuel === 'propane' ? 95.6 : 38,
      systemHeightM,
      reliefBarG: ratedInputKw > 100 ? 4 : 2.07,
      hasFloor,
      hotWater,
      co2Bias: random.noise(0.06),
    },
  });
  const installed = ANCHOR.subtract({ days: Math.max(2, startedDaysAgo) + random.integer(1, 6) });
  return {
    key: `boiler-${index}`,
    position: position === 0 ? null : `boiler ${position + 1}`,
    appliance: {
      serial,
      maker: sheet.maker ?? 'Unknown maker',
      model,
      sheetId: sheet.sheetId,
      plateFuel: fuel,
      tagFuel: fuel,
      ratedInputKw,
      ratedInputBasis: sheet.appliance.ratedInputBasis,
      ventKind: 'polypropylene 80 mm',
      ventLengthM: random.integer(2, 9),
      ventElbows: random.integer(1, 4),
      isVentConcealed: false,
      note: null,
    },
    dates: [
      {
        kind: 'made',
        on: installed.subtract({ days: random.integer(60, 240) }).toString(),
        precision: 'month',
        source: 'data plate',
      },
      { kind: 'installed', on: installed.toString(), precision: 'day', source: 'fitter' },
      ...(sheet.cover?.registration.countedFrom === 'title-transfer'
        ? [
            {
              kind: 'title-transfer' as const,
              on: installed.add({ days: 1 }).toString(),
              precision: 'day' as const,
              source: 'notary letter',
            },
          ]
        : []),
    ],
  };
}

/** Serials that fit the maker's pattern, all different. */
function makeSerial(sheet: ModelSheet, index: number): string {
  const number = String(204_410 + index * 17);
  const shapes = [`EBK${number}17`, `QS25C${number}`, `SG-${number}7`, `2025-TH-${number.slice(-5)}`, `FB${number}`];
  const pattern = sheet.appliance.serialPattern;
  const found = shapes.find((shape) => pattern !== null && new RegExp(pattern).test(shape));
  return found ?? `FB${number}`;
}

function addHistory(boiler: Boiler, index: number): void {
  if (boiler.startedDaysAgo < 0) {
    if (index % 2 === 0)
      openJobs.push({
        applianceKey: boiler.key,
        kind: 'startup',
        readyItems: index % 4 === 0 ? 6 : 99,
        priority: 1,
        latestOn: null,
        latestWhy: null,
      });
    else visits.push(bookedVisit(boiler, index));
    return;
  }
  const startedOn = ANCHOR.subtract({ days: boiler.startedDaysAgo });
  const fault = index % 4 === 1 ? FAULTS[Math.floor(index / 4) % FAULTS.length] : undefined;
  visits.push(doneVisit(boiler, 'startup', startedOn, 0, fault?.key ?? null));
  registrations.push(registrationFor(boiler, index, startedOn));
  if (fault?.makesSafe) {
    makeSafes.push({
      applianceKey: boiler.key,
      visitKey: `${boiler.key}-startup-0`,
      what: 'CO in the flue above the limit',
      isolatedHow: 'gas valve at the boiler shut and tagged',
      labelNumber: `MS-${300 + index}`,
      toldWhom: boiler.occupant,
      isClosed: false,
    });
  }
  for (let year = 1; ; year += 1) {
    const dueOn = startedOn.add({ years: year }).add({ days: random.integer(-25, 20) });
    if (Temporal.PlainDate.compare(dueOn, ANCHOR) >= 0) break;
    // One in ten services was missed: the service round has something to find.
    if (random.chance(0.1)) continue;
    const serviceFault = random.chance(0.15) ? random.pick(FAULTS.filter((one) => !one.makesSafe)).key : null;
    visits.push(doneVisit(boiler, 'service', dueOn, year, serviceFault));
  }
}

function startupNotes(boiler: Boiler): RecordedRun {
  const booked = visits.find((visit) => visit.applianceKey === boiler.key);
  if (booked === undefined) throw new Error(`${boiler.serial} is not booked`);
  return notesOf(boiler, 'startup', Temporal.PlainDate.from(booked.plannedOn), 0, booked.technicianKey);
}

function notesOf(
  boiler: Boiler,
  kind: 'startup' | 'service',
  on: Temporal.PlainDate,
  years: number,
  technicianKey: string,
): RecordedRun {
  const { facts } = boiler;
  return writeNotes(kind === 'startup' ? facts.sheet.startup : facts.sheet.service, {
    facts,
    truth: visitTruth(facts, years, on.month, random),
    serial: boiler.serial,
    technician: people.find((person) => person.key === technicianKey)?.name ?? '',
    occupant: boiler.occupant,
    startedAt: `${on.toString()}T13:0${random.integer(0, 9)}:00.000Z`,
    nextServiceOn: on.add({ years: 1 }).toString(),
    random,
  });
}

function doneVisit(
  boiler: Boiler,
  kind: 'startup' | 'service',
  on: Temporal.PlainDate,
  years: number,
  faultKey: string | null,
): Scenario['visits'][number] {
  const { facts } = boiler;
  const technicianKey =
    facts.ratedInputKw > 117 || facts.fuel === 'propane'
      ? 'ingrid'
      : (technicians[(boilers.indexOf(boiler) + years) % 2] ?? 'tobias');
  const notes = notesOf(boiler, kind, on, years, technicianKey);
  const fault = FAULTS.find((one) => one.key === faultKey);
  return {
    key: `${boiler.key}-${kind}-${years}`,
    applianceKey: boiler.key,
    kind,
    technicianKey,
    plannedOn: on.toString(),
    plannedFrom: '09:00',
    plannedTo: kind === 'startup' ? '12:30' : '11:00',
    durationMin: kind === 'startup' ? 210 : 120,
    isDone: true,
    isPencilled: false,
    analyserKey: technicianKey === 'ingrid' ? 'analyser-2' : 'analyser-1',
    faultKey,
    ...writtenDown(notes, fault, on),
  };
}

/** A slip or fault found long ago was put right and read again the same day; a recent one is still open. */
function writtenDown(
  notes: RecordedRun,
  fault: Fault | undefined,
  on: Temporal.PlainDate,
): Pick<Scenario['visits'][number], 'firstNotes' | 'notes'> {
  if (fault === undefined) return { firstNotes: null, notes };
  const isRecent = on.until(ANCHOR, { largestUnit: 'days' }).days < 45;
  return isRecent || fault.makesSafe
    ? { firstNotes: null, notes: fault.apply(notes) }
    : { firstNotes: fault.apply(notes), notes };
}

function bookedVisit(boiler: Boiler, index: number): Scenario['visits'][number] {
  return {
    key: `${boiler.key}-startup-0`,
    applianceKey: boiler.key,
    kind: 'startup',
    technicianKey: boiler.facts.fuel === 'propane' || boiler.facts.ratedInputKw > 117 ? 'ingrid' : 'tobias',
    plannedOn: ANCHOR.add({ days: index % 3 }).toString(),
    plannedFrom: '09:00',
    plannedTo: '12:30',
    durationMin: 210,
    isDone: false,
    isPencilled: index % 3 === 2,
    analyserKey: 'analyser-1',
    faultKey: null,
    firstNotes: null,
    notes: null,
  };
}

function registrationFor(
  boiler: Boiler,
  index: number,
  startedOn: Temporal.PlainDate,
): Scenario['registrations'][number] {
  const isRecent = boiler.startedDaysAgo < 40;
  const state = isRecent ? 'recording' : index % 10 === 3 ? 'submitted' : index % 13 === 7 ? 'recording' : 'confirmed';
  const submittedOn = state === 'recording' ? null : startedOn.add({ days: 6 }).toString();
  return {
    applianceKey: boiler.key,
    state,
    by: index % 12 === 5 ? 'owner' : 'office',
    submittedOn,
    confirmedOn: state === 'confirmed' ? startedOn.add({ days: 15 }).toString() : null,
    number: state === 'confirmed' ? `R-${40_000 + index * 31}` : null,
    followUpOn: index % 12 === 5 && state !== 'confirmed' ? startedOn.add({ days: 14 }).toString() : null,
  };
}

/** A full week for everybody: mornings around the booked startups, each technician near home. */
function bookServices(): Scenario['upcoming'] {
  const free = boilers.filter(({ startedDaysAgo }) => startedDaysAgo > 290);
  const homeTowns = { tobias: 'Graven Bay', ingrid: 'Farrow Mills', felix: 'Tidewick' } as const;
  const booked: Scenario['upcoming'] = [];
  for (const [technicianKey, town] of Object.entries(homeTowns)) {
    const near = free.filter(({ customerIndex, facts }) => {
      const city = customers[customerIndex]?.party.city;
      const isHome = city === town || (technicianKey === 'ingrid' && city === 'Upper Corrie');
      return isHome && (technicianKey === 'ingrid' || facts.ratedInputKw <= 117);
    });
    for (const [index, boiler] of near.slice(0, 11).entries()) {
      const isStartupDay = technicianKey !== 'felix' && index < 3;
      const workingDay = isStartupDay ? index : 3 + Math.floor((index - 3) / 2);
      const shifted = technicianKey === 'felix' ? [0, 0, 1, 1, 2, 4, 4, 5, 6, 6, 7][index] : workingDay;
      const isMorning = !isStartupDay && index % 2 === 1;
      booked.push({
        applianceKey: boiler.key,
        technicianKey,
        workingDay: shifted ?? workingDay,
        startMin: isMorning ? 510 : 825,
        durationMin: 105,
        plannedFrom: isMorning ? '08:30' : '13:00',
        plannedTo: isMorning ? '09:30' : '15:00',
        isPromised: index % 3 !== 2,
      });
    }
  }
  return booked;
}

/** A few of the last year's startups took a second trip. */
function wasteTrips(): Scenario['wastedTrips'] {
  const reasons = [
    { code: 'no-gas', isChargeable: true, note: 'meter not set yet' },
    { code: 'vent-unfinished', isChargeable: true, note: 'terminal missing' },
    { code: 'no-access', isChargeable: false, note: 'builder had the key' },
    { code: 'no-gas', isChargeable: true, note: 'pipe test outstanding' },
  ] as const;
  const recent = visits.filter(
    ({ kind, isDone, plannedOn }) =>
      kind === 'startup' &&
      isDone &&
      Temporal.PlainDate.from(plannedOn).until(ANCHOR, { largestUnit: 'days' }).days < 360,
  );
  return reasons.flatMap((reason, index) => {
    const visit = recent[index * 3];
    return visit === undefined ? [] : [{ visitKey: visit.key, daysBefore: 5 + index, ...reason }];
  });
}

/** Services that somebody should book: each with the day after which cover would be at stake. */
function waitingServices(): Scenario['openJobs'] {
  const taken = new Set(upcoming.map(({ applianceKey }) => applianceKey));
  return boilers
    .filter(({ key, startedDaysAgo }) => startedDaysAgo > 250 && !taken.has(key))
    .slice(0, 7)
    .map(({ key }, index) => ({
      applianceKey: key,
      kind: index === 4 ? ('repair' as const) : ('service' as const),
      readyItems: 0,
      priority: index === 4 ? 3 : 1,
      latestOn: index === 4 ? null : ANCHOR.add({ days: 4 + index * 6 }).toString(),
      latestWhy: index === 4 ? null : 'cover asks for the yearly service by then',
    }));
}

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
function makersTrainings(initials: string, fromDays: number): Scenario['people'][number]['trainings'] {
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

function tradeParty(key: string, name: string, street: string): Scenario['tradeParties'][number] {
  return {
    key,
    party: {
      kind: 'firm',
      name,
      contactName: null,
      language: 'en',
      email: `office@${key}.example`,
      phoneTyped: '902 555 0177',
      street,
      postcode: 'B4V 2A2',
      city: 'Tidewick',
      region: null,
      country: 'CA',
      note: null,
    },
  };
}
