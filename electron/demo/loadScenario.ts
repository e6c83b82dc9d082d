/** Puts the scenario into an empty store, with every date moved so that its anchor is today. */
import { Temporal } from 'temporal-polyfill';
import { findAppliance } from '../../db/appliances.ts';
import type { Store } from '../../db/openStore.ts';
import { findRegistration } from '../../db/registrations.ts';
import {
  absences,
  applianceDates,
  appliances,
  attachments,
  calibrations,
  companies,
  consents,
  customers,
  gasLoads,
  gasSupplies,
  gasSupplySites,
  instruments,
  jobs,
  licences,
  makeSafes,
  parties,
  partyRoles,
  permits,
  placements,
  readinessAnswers,
  registrations,
  siteEmitters,
  sites,
  staff,
  staffSkills,
  trainings,
  visitCrew,
  visitJobs,
  visits,
  wastedTrips,
  workingHours,
} from '../../db/schema/index.ts';
import { findNewestRevision } from '../../db/sheets.ts';
import { listEmitters } from '../../db/sites.ts';
import type { StoreWriter } from '../../db/storeWriter.ts';
import { findVisit } from '../../db/visits.ts';
import { SITE_FUELS } from '../../domain/combustion/fuels.ts';
import { instrumentKindFor } from '../../domain/judgement/proof/instrumentKindFor.ts';
import type { EmitterKind, FuelKey } from '../../domain/procedure/modelSheet.ts';
import { READINESS_ITEMS } from '../../domain/procedure/readiness.ts';
import type { QuantityKey } from '../../domain/quantity/quantities.ts';
import { wallMinute } from '../../domain/schedule/wallClock.ts';
import { foldForSearch } from '../../domain/text/foldForSearch.ts';
import { serialKeyOf } from '../../domain/text/serialKey.ts';
import type { ApplianceFields } from '../contract/appliances.ts';
import { setRoles } from '../operations/appHandlers.ts';
import { toPartyRow } from '../operations/partyFields.ts';
import { hashPin } from '../operations/pins.ts';
import { readRunState } from '../operations/runState.ts';
import { sealRun } from '../operations/sealRun.ts';
import { addShippedSheets } from '../operations/shippedSheets.ts';
import { addLists } from './addLists.ts';
import { addMailings } from './addMailings.ts';
import { addOfficeWork } from './addOfficeWork.ts';
import { type Ids, idOf } from './ids.ts';
import { moveDays } from './moveDays.ts';
import { recordNotes } from './recordNotes.ts';
import type { Scenario } from './scenario.ts';

export type LoadOptions = {
  readonly appRoot: string;
  readonly now: string;
  readonly pin: string;
  readonly putFile: (bytes: Uint8Array) => { readonly sha256: string };
  readonly readPhoto: (fileName: string) => Uint8Array;
};

type VisitOfScenario = Scenario['visits'][number];

export function loadScenario(store: Store, unmoved: Scenario, options: LoadOptions): void {
  const data = moveDays(unmoved, unmoved.anchorOn, options.now);
  const ids: Ids = new Map();
  store.write({ actorId: null, now: options.now }, (writer) => {
    const { roadFactor, speedKmPerH, ...place } = data.travel;
    writer.insert(companies, {
      ...data.company,
      ...place,
      travelRoadFactor: roadFactor,
      travelSpeedKmPerH: speedKmPerH,
    });
    addShippedSheets(writer, options.appRoot, 'all');
    addPeople(writer, data, ids, hashPin(options.pin));
    for (const { key, party } of data.tradeParties)
      ids.set(key, writer.insert(parties, toPartyRow(party, data.company.country)));
    for (const customer of data.customers) addCustomer(writer, customer, ids, data.company.country);
    const photos = putPhotos(data, options);
    for (const registration of data.registrations) {
      writer.insert(registrations, { ...registration, applianceId: idOf(ids, registration.applianceKey), jobId: null });
    }
    for (const visit of data.visits) addVisit(writer, onWorkingDay(visit, data.anchorOn), data, ids, photos);
    for (const visit of data.upcoming) addUpcoming(writer, visit, ids, data.anchorOn);
    for (const trip of data.wastedTrips) addWastedTrip(writer, trip, data, ids);
    for (const openJob of data.openJobs) addOpenJob(writer, openJob, ids, options.now);
    for (const makeSafe of data.makeSafes) addMakeSafe(writer, makeSafe, data, ids);
    sealVisits(writer, store.raw, data.visits, ids);
    addOfficeWork(writer, data, ids);
  });
  addLists(store, data, ids, options);
  addMailings(store, data, ids, options);
}

function addPeople(writer: StoreWriter, data: Scenario, ids: Ids, pinHash: string): void {
  for (const person of data.people) {
    const staffId = writer.insert(staff, {
      name: person.name,
      initials: person.initials,
      pinHash,
      activeFrom: '2020-01-01',
      baseStreet: person.base?.street ?? null,
      basePostcode: person.base?.postcode ?? null,
      baseCity: person.base?.city ?? null,
      baseLatitude: person.base?.latitude ?? null,
      baseLongitude: person.base?.longitude ?? null,
    });
    ids.set(person.key, staffId);
    setRoles(writer, staffId, [], person.roles);
    for (const licence of person.licences) writer.insert(licences, { staffId, ...licence });
    for (const training of person.trainings) writer.insert(trainings, { staffId, ...training });
    for (const hours of person.hours) writer.insert(workingHours, { staffId, ...hours });
    for (const skill of person.skills) writer.insert(staffSkills, { staffId, skill });
  }
  for (const { personKey, fromWorkingDay, toWorkingDay, reason } of data.absences) {
    writer.insert(absences, {
      staffId: idOf(ids, personKey),
      fromOn: workingDayFrom(data.anchorOn, fromWorkingDay),
      toOn: workingDayFrom(data.anchorOn, toWorkingDay),
      reason,
    });
  }
  for (const { key, keptByKey, calibrations: dates, ...instrument } of data.instruments) {
    const keptBy = keptByKey === null ? null : idOf(ids, keptByKey);
    const instrumentId = writer.insert(instruments, { ...instrument, keptBy });
    ids.set(key, instrumentId);
    for (const calibration of dates) writer.insert(calibrations, { instrumentId, ...calibration });
  }
}

function addCustomer(writer: StoreWriter, customer: Scenario['customers'][number], ids: Ids, country: string): void {
  const partyId = writer.insert(parties, toPartyRow(customer.party, country));
  const customerId = writer.insert(customers, { partyId, since: customer.since });
  for (const consent of customer.consents) writer.insert(consents, { partyId, ...consent });
  for (const { key, site, gasSupply, roles, permits: issued, appliances: standing } of customer.sites) {
    const { emitters, ...fields } = site;
    const searchText = foldForSearch([site.street, site.postcode, site.city].filter(Boolean).join(' '));
    const siteId = writer.insert(sites, { customerId, ...fields, searchText });
    ids.set(key, siteId);
    for (const emitter of emitters) writer.insert(siteEmitters, { siteId, ...emitter });
    for (const { partyKey, role } of roles) writer.insert(partyRoles, { siteId, partyId: idOf(ids, partyKey), role });
    for (const permit of issued) writer.insert(permits, { siteId, ...permit });
    const { loads, ...supply } = gasSupply;
    const gasSupplyId = writer.insert(gasSupplies, supply);
    writer.insert(gasSupplySites, { gasSupplyId, siteId });
    for (const load of loads) writer.insert(gasLoads, { gasSupplyId, ...load });
    for (const { key: applianceKey, appliance, position, dates } of standing) {
      const applianceId = writer.insert(appliances, { ...appliance, serialKey: serialKeyOf(appliance.serial) });
      ids.set(applianceKey, applianceId);
      ids.set(`site of ${applianceKey}`, siteId);
      ids.set(`customer of ${applianceKey}`, partyId);
      writer.insert(placements, {
        applianceId,
        siteId,
        position,
        fromOn: dates.find((date) => date.kind === 'installed')?.on ?? null,
      });
      for (const date of dates) writer.insert(applianceDates, { applianceId, ...date });
      const name = `${appliance.maker} ${appliance.model}`;
      writer.insert(gasLoads, { gasSupplyId, name, inputKw: inputKwGross(appliance), applianceId });
    }
  }
}

/** As the gas meter sees it: a net plate leaves out the heat of the water vapour. */
function inputKwGross(
  appliance: Pick<ApplianceFields, 'plateFuel' | 'ratedInputKw' | 'ratedInputBasis'>,
): number | null {
  const { ratedInputKw, ratedInputBasis } = appliance;
  if (ratedInputKw === null || ratedInputBasis !== 'net') return ratedInputKw;
  const fuel = SITE_FUELS[appliance.plateFuel ?? 'natural-gas'];
  return Math.round((ratedInputKw * 10 * fuel.hhv25CKj) / fuel.lhv25CKj) / 10;
}

type Photos = ReadonlyMap<string, { readonly sha256: string; readonly byteLength: number }>;

function putPhotos(data: Scenario, options: LoadOptions): Photos {
  const names = new Set(data.visits.flatMap((visit) => Object.values(visit.notes?.photos ?? {})));
  return new Map(
    [...names].map((fileName) => {
      const bytes = options.readPhoto(fileName);
      return [fileName, { sha256: options.putFile(bytes).sha256, byteLength: bytes.length }];
    }),
  );
}

/** The same few pictures stand for every visit's, each taken on its day; made once per visit. */
function photosOfVisit(
  writer: StoreWriter,
  photos: Photos,
  taken: { readonly takenAt: string; readonly addedById: string },
): (fileName: string) => string {
  const made: Ids = new Map();
  return (fileName) => {
    const known = made.get(fileName);
    if (known !== undefined) return known;
    const file = photos.get(fileName);
    if (file === undefined) throw new Error(`the scenario names the photo "${fileName}" but does not have it`);
    const attachmentId = writer.insert(attachments, {
      ...file,
      ...taken,
      mediaType: 'image/png',
      fileName,
      origin: 'original',
      subject: 'photo',
      addedAt: taken.takenAt,
    });
    made.set(fileName, attachmentId);
    return attachmentId;
  };
}

function addVisit(writer: StoreWriter, visit: VisitOfScenario, data: Scenario, ids: Ids, photos: Photos): void {
  const applianceId = idOf(ids, visit.applianceKey);
  const technicianId = idOf(ids, visit.technicianKey);
  const siteId = idOf(ids, `site of ${visit.applianceKey}`);
  const appliance = findAppliance(writer.db, applianceId);
  const jobId = writer.insert(jobs, {
    kind: visit.kind,
    applianceId,
    openedAt: `${visit.plannedOn}T12:00:00.000Z`,
    isChargeable: true,
  });
  const visitId = writer.insert(visits, {
    siteId,
    state: visit.isPencilled ? 'pencilled' : 'planned',
    plannedOn: visit.plannedOn,
    plannedFrom: visit.plannedFrom,
    plannedTo: visit.plannedTo,
    durationMin: visit.durationMin,
    startMin: wallMinute(visit.plannedFrom),
    promisedOn: visit.isPencilled ? null : visit.plannedOn,
  });
  ids.set(visit.key, visitId);
  ids.set(`job of ${visit.key}`, jobId);
  writer.insert(visitJobs, { visitId, jobId });
  writer.insert(visitCrew, { visitId, staffId: technicianId, role: 'licensed' });
  if (visit.kind === 'startup') {
    const registration = findRegistration(writer.db, applianceId);
    if (registration !== undefined) writer.update(registrations, registration.id, { jobId });
    addReadiness(writer, jobId, idOf(ids, 'dispatcher'), `${visit.plannedOn}T09:00:00.000Z`, READINESS_ITEMS.length);
  }
  if (visit.notes === null) return;
  const { runId, endedAt } = recordNotes(writer, {
    visitId,
    jobId,
    steps: visit.kind,
    revision: findNewestRevision(writer.db, appliance?.sheetId ?? ''),
    fuel: (appliance?.plateFuel ?? 'natural-gas') as FuelKey,
    notes: visit.notes,
    firstNotes: visit.firstNotes,
    staffId: technicianId,
    instrumentOf: (quantity) => instrumentOf(quantity, visit, data, ids),
    photoOf: photosOfVisit(writer, photos, { takenAt: visit.notes.startedAt, addedById: technicianId }),
    emitters: listEmitters(writer.db, siteId).map((row) => row.emitter as EmitterKind),
  });
  ids.set(`run of ${visit.key}`, runId);
  const isOpen = visit.faultKey !== null && visit.firstNotes === null;
  writer.update(visits, visitId, {
    state: 'finished',
    startedAt: visit.notes.startedAt,
    endedAt,
    outcome: isOpen ? 'return-needed' : 'finished',
    outcomeReason: isOpen ? 'one reading to be looked at again' : null,
    labourMin: visit.durationMin,
  });
  if (isOpen) return;
  writer.update(jobs, jobId, { closedAt: endedAt });
  if (visit.kind === 'startup') {
    writer.insert(applianceDates, {
      applianceId,
      kind: 'started',
      on: visit.plannedOn,
      precision: 'day',
      source: 'startup visit',
    });
  }
}

/** What is still ahead is booked on days on which somebody works, whatever day the demo is opened. */
function onWorkingDay(visit: VisitOfScenario, anchorOn: string): VisitOfScenario {
  if (visit.isDone) return visit;
  const ahead = Temporal.PlainDate.from(anchorOn).until(visit.plannedOn, { largestUnit: 'days' }).days;
  return { ...visit, plannedOn: workingDayFrom(anchorOn, ahead) };
}

/** The nth day from Monday to Friday, the anchor itself being 0 when it is one. */
function workingDayFrom(anchorOn: string, count: number): string {
  let date = Temporal.PlainDate.from(anchorOn);
  const skipWeekend = () => {
    while (date.dayOfWeek > 5) date = date.add({ days: 1 });
  };
  skipWeekend();
  for (let done = 0; done < count; done += 1) {
    date = date.add({ days: 1 });
    skipWeekend();
  }
  return date.toString();
}

function addUpcoming(writer: StoreWriter, visit: Scenario['upcoming'][number], ids: Ids, anchorOn: string): void {
  const { applianceKey, technicianKey, workingDay, isPromised, ...fields } = visit;
  const plannedOn = workingDayFrom(anchorOn, workingDay);
  const jobId = writer.insert(jobs, {
    kind: 'service',
    applianceId: idOf(ids, applianceKey),
    openedAt: writer.now,
    isChargeable: true,
  });
  const visitId = writer.insert(visits, {
    siteId: idOf(ids, `site of ${applianceKey}`),
    state: 'planned',
    plannedOn,
    ...fields,
    promisedOn: isPromised ? plannedOn : null,
  });
  writer.insert(visitJobs, { visitId, jobId });
  writer.insert(visitCrew, { visitId, staffId: idOf(ids, technicianKey), role: 'licensed' });
}

function addWastedTrip(writer: StoreWriter, trip: Scenario['wastedTrips'][number], data: Scenario, ids: Ids): void {
  const visit = data.visits.find((one) => one.key === trip.visitKey);
  if (visit === undefined) throw new Error(`no visit "${trip.visitKey}" to have been wasted before`);
  const plannedOn = Temporal.PlainDate.from(visit.plannedOn).subtract({ days: trip.daysBefore }).toString();
  const at = `${plannedOn}T13:20:00.000Z`;
  const visitId = writer.insert(visits, {
    siteId: idOf(ids, `site of ${visit.applianceKey}`),
    state: 'finished',
    plannedOn,
    plannedFrom: visit.plannedFrom,
    plannedTo: visit.plannedTo,
    durationMin: visit.durationMin,
    outcome: 'site-not-ready',
    outcomeReason: trip.note,
    endedAt: at,
  });
  writer.insert(visitJobs, { visitId, jobId: idOf(ids, `job of ${trip.visitKey}`) });
  writer.insert(visitCrew, { visitId, staffId: idOf(ids, visit.technicianKey), role: 'licensed' });
  const { code, isChargeable, note } = trip;
  writer.insert(wastedTrips, {
    visitId,
    code,
    isChargeable,
    note,
    recordedById: idOf(ids, visit.technicianKey),
    recordedAt: at,
  });
}

/** The technician's own analyser, and for the rest what the firm has one of; null for what a dial or the eye gives. */
function instrumentOf(quantity: QuantityKey, visit: VisitOfScenario, data: Scenario, ids: Ids): string | null {
  const kind = instrumentKindFor(quantity);
  if (kind === null) return null;
  const own = data.instruments.find(
    (one) => one.kind === kind && (kind !== 'analyser' || one.key === visit.analyserKey),
  );
  return own === undefined ? null : idOf(ids, own.key);
}

function addReadiness(
  writer: StoreWriter,
  jobId: string,
  recordedById: string,
  recordedAt: string,
  count: number,
): void {
  for (const item of READINESS_ITEMS.slice(0, count)) {
    writer.insert(readinessAnswers, {
      jobId,
      itemKey: item.key,
      answer: 'yes',
      confirmedBy: 'builder, by phone',
      recordedById,
      recordedAt,
    });
  }
}

function addOpenJob(writer: StoreWriter, openJob: Scenario['openJobs'][number], ids: Ids, now: string): void {
  const { kind, priority, latestOn, latestWhy } = openJob;
  const jobId = writer.insert(jobs, {
    kind,
    applianceId: idOf(ids, openJob.applianceKey),
    openedAt: now,
    isChargeable: true,
    priority,
    latestOn,
    latestWhy,
  });
  if (kind !== 'startup') return;
  addReadiness(writer, jobId, idOf(ids, 'dispatcher'), now, openJob.readyItems);
}

function addMakeSafe(writer: StoreWriter, makeSafe: Scenario['makeSafes'][number], data: Scenario, ids: Ids): void {
  const visit = data.visits.find((one) => one.key === makeSafe.visitKey);
  const visitId = idOf(ids, makeSafe.visitKey);
  writer.insert(makeSafes, {
    applianceId: idOf(ids, makeSafe.applianceKey),
    siteId: idOf(ids, `site of ${makeSafe.applianceKey}`),
    visitId,
    what: makeSafe.what,
    isolatedHow: makeSafe.isolatedHow,
    labelNumber: makeSafe.labelNumber,
    toldWhom: makeSafe.toldWhom,
    deliveredHow: 'in person',
    isRefused: false,
    openedById: idOf(ids, visit?.technicianKey ?? 'tobias'),
    openedAt: findVisit(writer.db, visitId)?.endedAt ?? writer.now,
  });
  writer.update(visits, visitId, { outcome: 'made-safe', outcomeReason: makeSafe.what });
}

/**
 * Everything that is not to be come back to was signed the same day; one after the other as they ended, because a day is
 * closed once something is sealed on a later one.
 */
function sealVisits(writer: StoreWriter, raw: Store['raw'], visits: readonly VisitOfScenario[], ids: Ids): void {
  const ended = visits.flatMap(({ key, technicianKey }) => {
    const row = findVisit(writer.db, idOf(ids, key));
    const runId = ids.get(`run of ${key}`);
    if (row?.endedAt == null || runId === undefined || row.outcome === 'return-needed') return [];
    return [{ row, runId, sealedAt: row.endedAt, sealedById: idOf(ids, technicianKey) }];
  });
  for (const { row, runId, ...by } of ended.toSorted((a, b) => a.sealedAt.localeCompare(b.sealedAt)))
    sealRun(writer, raw, readRunState(writer.db, runId, row.id, by.sealedAt), row, by);
}
