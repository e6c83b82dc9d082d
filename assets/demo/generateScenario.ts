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
import { type Building, buildingsOfFirm, HEATING_VALUE_MJ_PER_M3, houseOf } from './generator/buildings.ts';
import { consentsOf, hasNoEmail } from './generator/consents.ts';
import { FAULTS, type Fault } from './generator/faults.ts';
import { ANCHOR, absences, instruments, people as peopleOf, tradeParties } from './generator/firm.ts';
import { lists } from './generator/lists.ts';
import { type BoilerModel, inputKwGross, modelsOf } from './generator/models.ts';
import { writeNotes } from './generator/notes.ts';
import { agreements, claims, mailings, packetBatches, recalls } from './generator/officeWork.ts';
import { type Random, seeded } from './generator/random.ts';
import { type BoilerFacts, visitTruth } from './generator/truth.ts';
import { FAMILY_NAMES, FIRMS, GIVEN_NAMES, STREETS, TOWNS } from './generator/words.ts';

const SEED = 20260302;
const CUSTOMERS = 40;
const APPLIANCES = 60;
const FIRST_VISIT_DAYS_AGO = 1090;
/** At the boiler's inlet with nothing burning, as the regulator is set. */
const NOMINAL_MBAR_G = { 'natural-gas': 20, propane: 33 } as const;
/** Where chance may not put it: a school of that size has mains gas. */
const TOWN_OF_FIRM: Readonly<Record<string, string>> = {
  'Bluff Head Homes': 'Tidewick',
  'Saltmarsh Lettings': 'Tidewick',
  'Grindstone Bakery': 'Upper Corrie',
  'Headland School Board': 'Graven Bay',
  'Quayside Flats Association': 'Farrow Mills',
};

const random = seeded(SEED);
const root = new URL('../..', import.meta.url).pathname;
const sheets = readdirSync(join(root, 'assets/sheets'))
  .sort()
  .map((name) => unwrap(parseModelSheet(JSON.parse(readFileSync(join(root, 'assets/sheets', name), 'utf8')))));
const makersSheets = sheets.filter((sheet) => sheet.maker !== null);
const models = modelsOf(makersSheets);
const people = peopleOf(makersSheets);

type Boiler = {
  readonly key: string;
  readonly customerIndex: number;
  readonly facts: BoilerFacts;
  readonly serial: string;
  readonly startedDaysAgo: number;
  readonly occupant: string;
  /** Its own chance: what becomes of one boiler changes nothing of another. */
  readonly random: Random;
};

const technicians = ['tobias', 'ingrid', 'felix'];

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
  lists: lists(ANCHOR),
  packetBatches: packetBatches(ANCHOR),
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
  const chance = seeded(SEED + 1000 * (index + 1));
  const isFirm = index % 7 === 6;
  const firmName = FIRMS[Math.floor(index / 7) % FIRMS.length] ?? 'Tern Island Lodge';
  const name = isFirm ? firmName : personName(index);
  const picked = random.pick(TOWNS);
  const town = TOWNS.find(({ city }) => isFirm && city === TOWN_OF_FIRM[firmName]) ?? picked;
  const address = (): { street: string; postcode: string } => ({
    street: `${random.integer(1, 120)} ${random.pick(STREETS)}`,
    postcode: `${town.postcode} ${random.integer(1, 9)}A${random.integer(1, 9)}`,
  });
  const home = address();
  const since = ANCHOR.subtract({ days: random.integer(1100, 2400) });
  const fuel = town.city === 'Upper Corrie' ? ('propane' as const) : ('natural-gas' as const);
  const buildings = isFirm
    ? buildingsOfFirm(name, fuel, models, chance)
    : [houseOf(index, boilers.length, fuel, models, chance)];
  return {
    key: `customer-${index}`,
    since: since.toString(),
    party: {
      kind: isFirm ? 'firm' : 'person',
      name,
      contactName: isFirm ? 'Building manager' : null,
      language: index % 11 === 3 ? 'fr' : 'en',
      email: hasNoEmail(index) ? null : `${foldForSearch(name).replaceAll(' ', '.')}@mail.example`,
      phoneTyped: `902 555 ${String(1000 + index * 37).slice(-4)}`,
      ...home,
      city: town.city,
      region: null,
      country: 'CA',
      note: null,
    },
    consents: consentsOf(index, since, ANCHOR),
    sites: buildings.map((building, position) =>
      makeSite(building, {
        index,
        position,
        fuel,
        town,
        occupant: name,
        chance,
        ...(position === 0 ? home : address()),
      }),
    ),
  };
}

/** Twenty of each: in the second round every given name meets another family's. */
function personName(index: number): string {
  const round = Math.floor(index / GIVEN_NAMES.length);
  return `${GIVEN_NAMES[index % GIVEN_NAMES.length]} ${FAMILY_NAMES[(index * 7 + 3 + 5 * round) % FAMILY_NAMES.length]}`;
}

function makeSite(
  building: Building,
  at: {
    readonly index: number;
    readonly position: number;
    readonly fuel: 'natural-gas' | 'propane';
    readonly town: (typeof TOWNS)[number];
    readonly street: string;
    readonly postcode: string;
    readonly occupant: string;
    readonly chance: Random;
  },
): Scenario['customers'][number]['sites'][number] {
  const { index, position, fuel, town, chance } = at;
  const isTank = fuel === 'propane';
  const appliances = building.boilers.map((model, place) =>
    makeBoiler(model, building, {
      customerIndex: index,
      fuel,
      occupant: at.occupant,
      place: building.boilers.length > 1 ? `boiler ${place + 1}` : null,
    }),
  );
  // One site in eight still lacks them: packets with gaps are part of the demo.
  const isMissingPapers = index % 8 === 7;
  return {
    key: position === 0 ? `site-${index}` : `site-${index}-${position + 1}`,
    site: {
      label: building.label,
      street: at.street,
      postcode: at.postcode,
      city: town.city,
      region: null,
      country: 'CA',
      latitude: town.latitude + chance.noise(0.01),
      longitude: town.longitude + chance.noise(0.01),
      jurisdiction: 'north-america',
      timeZone: 'America/Halifax',
      buildingKind: building.kind,
      access: index % 3 === 0 ? 'key with the neighbour, dog in the yard' : null,
      // On the coast nobody lives lower than the spring tide comes.
      altitudeM: Math.max(3, Math.round(town.altitudeM + chance.noise(8))),
      systemHeightM: building.systemHeightM,
      systemVolumeL: building.systemVolumeL,
      systemVolumeHow: 'estimated',
      coldWaterC: 8,
      glycolKind: null,
      emitters: building.emitters.map((one) => ({ ...one })),
    },
    gasSupply: {
      kind: isTank ? 'tank' : 'meter',
      fuel,
      number: isTank ? null : `M-${7000 + 10 * index + position}`,
      dialM3: building.meterDialM3,
      compensation: isTank ? null : 'temperature',
      capacityM3PerH: building.meterCapacityM3PerH,
      regulator: isTank ? 'two stages' : 'one stage',
      nominalMbarG: NOMINAL_MBAR_G[fuel],
      tankVolumeL: isTank ? 1900 : null,
      heatingValueMjPerM3: HEATING_VALUE_MJ_PER_M3[fuel],
      heatingValueTyped: `${HEATING_VALUE_MJ_PER_M3[fuel]} MJ/m³`,
      heatingValueSource: isTank ? 'gas supplier, delivery note' : 'utility, monthly mean',
      heatingValueOn: ANCHOR.subtract({ months: 1 }).toString(),
      loads: building.otherLoads.map((one) => ({ ...one, applianceId: null })),
    },
    roles: isMissingPapers
      ? []
      : [
          { partyKey: 'fitter', role: 'fitter' },
          { partyKey: 'supplier', role: 'supplier' },
        ],
    permits: isMissingPapers ? [] : [permitFor(index, position, appliances)],
    appliances,
  };
}

/** Inspected the day after the last boiler was hung up. */
function permitFor(
  index: number,
  position: number,
  appliances: Scenario['customers'][number]['sites'][number]['appliances'],
): Scenario['customers'][number]['sites'][number]['permits'][number] {
  const installed = appliances.flatMap(({ dates }) => dates.filter(({ kind }) => kind === 'installed'));
  const last =
    installed
      .map(({ on }) => on)
      .sort()
      .at(-1) ?? ANCHOR.toString();
  return {
    number: `P-${2000 + 10 * index + position}`,
    issuer: 'Municipal building office',
    state: 'inspected',
    on: Temporal.PlainDate.from(last).add({ days: 1 }).toString(),
  };
}

function makeBoiler(
  model: BoilerModel,
  building: Building,
  at: {
    readonly customerIndex: number;
    readonly fuel: 'natural-gas' | 'propane';
    readonly occupant: string;
    readonly place: string | null;
  },
): Scenario['customers'][number]['sites'][number]['appliances'][number] {
  const { fuel } = at;
  const { sheet, ratedInputKw } = model;
  const index = boilers.length;
  const chance = seeded(SEED + 7901 * (index + 1));
  const serial = makeSerial(sheet, index);
  const startedDaysAgo =
    index < 3
      ? index * 9 + 4
      : index >= APPLIANCES - 5
        ? -1
        : Math.round(FIRST_VISIT_DAYS_AGO - (index / APPLIANCES) * 1040);
  const hotWater = sheet.appliance.hotWater === 'any' ? 'none' : sheet.appliance.hotWater;
  const isPlant = ratedInputKw > 60;
  boilers.push({
    key: `boiler-${index}`,
    customerIndex: at.customerIndex,
    serial,
    startedDaysAgo,
    occupant: at.occupant,
    random: chance,
    facts: {
      sheet,
      fuel,
      ratedInputKw,
      inputKwGross: inputKwGross(model, fuel),
      outputKw: model.outputKw,
      heatingValueMjPerM3: HEATING_VALUE_MJ_PER_M3[fuel],
      nominalMbarG: NOMINAL_MBAR_G[fuel],
      meterDialM3: building.meterDialM3,
      systemHeightM: building.systemHeightM,
      reliefBarG: isPlant ? 4 : 2.07,
      emitters: building.emitters.map(({ emitter }) => emitter),
      hotWater,
      vent: isPlant ? 'stainless steel, 150 mm' : 'polypropylene, 80 mm',
      co2Bias: chance.noise(0.06),
    },
  });
  const installed = ANCHOR.subtract({ days: Math.max(2, startedDaysAgo) + chance.integer(1, 6) });
  return {
    key: `boiler-${index}`,
    position: at.place,
    appliance: {
      serial,
      maker: sheet.maker ?? 'Unknown maker',
      model: model.model,
      sheetId: sheet.sheetId,
      plateFuel: fuel,
      tagFuel: fuel,
      ratedInputKw,
      ratedInputBasis: sheet.appliance.ratedInputBasis,
      ventKind: isPlant ? 'stainless steel 150 mm' : 'polypropylene 80 mm',
      ventLengthM: chance.integer(2, 9),
      ventElbows: chance.integer(1, 4),
      isVentConcealed: false,
      note: null,
    },
    dates: [
      {
        kind: 'made',
        on: installed.subtract({ days: chance.integer(60, 240) }).toString(),
        precision: 'month',
        source: 'data plate',
      },
      // One in nine came without its delivery note.
      ...(index % 9 === 4
        ? []
        : [
            {
              kind: 'sold' as const,
              on: installed.subtract({ days: 3 }).toString(),
              precision: 'day' as const,
              source: 'delivery note',
            },
          ]),
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
    const dueOn = startedOn.add({ years: year }).add({ days: boiler.random.integer(-25, 20) });
    if (Temporal.PlainDate.compare(dueOn, ANCHOR) >= 0) break;
    // One in ten services was missed: the service round has something to find.
    if (boiler.random.chance(0.1)) continue;
    const serviceFault = boiler.random.chance(0.15)
      ? boiler.random.pick(FAULTS.filter((one) => !one.makesSafe)).key
      : null;
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
    truth: visitTruth(facts, years, on.month, boiler.random),
    serial: boiler.serial,
    technician: people.find((person) => person.key === technicianKey)?.name ?? '',
    occupant: boiler.occupant,
    startedAt: `${on.toString()}T13:0${boiler.random.integer(0, 9)}:00.000Z`,
    // Within the year, and a look in half-way.
    nextServiceOn: on.add({ days: 350 }).toString(),
    firstYearCheckOn: on.add({ days: 182 }).toString(),
    random: boiler.random,
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
