/** Jobs with their readiness, and the visits booked to do them. */
import { findAppliance } from '../../db/appliances.ts';
import { readOpenNotices } from '../../db/openNotices.ts';
import type { ReadableDb } from '../../db/openStore.ts';
import { findStaff } from '../../db/people.ts';
import { isTakenOut } from '../../db/placements.ts';
import { jobs, readinessAnswers, visitCrew, visitJobs, visits } from '../../db/schema/index.ts';
import { findGasSupply, listGasLoads } from '../../db/sites.ts';
import type { StoreWriter } from '../../db/storeWriter.ts';
import {
  findJob,
  findOpenStartup,
  findVisit,
  listCrews,
  listJobs,
  listReadiness,
  type VisitRecord,
} from '../../db/visits.ts';
import { connectedGasLoad } from '../../domain/judgement/site/connectedGasLoad.ts';
import type { FuelKey } from '../../domain/procedure/modelSheet.ts';
import { READINESS_ITEMS } from '../../domain/procedure/readiness.ts';
import { byPressing } from '../../domain/schedule/byPressing.ts';
import { keepsFromWork } from '../../domain/schedule/gasLicence.ts';
import { findObstacles } from '../../domain/schedule/obstacles.ts';
import type { OutputOf } from '../contract/index.ts';
import type { VisitRow } from '../contract/visits.ts';
import { type AskedJob, agedReadinessOf } from './agedReadiness.ts';
import { companyToday } from './companyToday.ts';
import { actorOf, fail, type Handlers, notFound } from './handler.ts';
import { type GasWork, licenceProblemOf, requireLicenceBeforeFiring } from './licensing.ts';
import { readVisitRows } from './visitRows.ts';
import { expectedMinutesOf, readWorkers, worksOfJobs } from './workers.ts';

export const bookingHandlers: Handlers<
  | 'jobs.open'
  | 'jobs.list'
  | 'jobs.getReadiness'
  | 'jobs.setReadiness'
  | 'jobs.askedAgain'
  | 'visits.whoMay'
  | 'visits.book'
  | 'visits.update'
  | 'visits.cancel'
  | 'visits.list'
  | 'visits.get'
> = {
  'jobs.open': (input, context) => {
    if (findAppliance(context.db, input.applianceId) === undefined) return notFound('appliances', input.applianceId);
    if (isTakenOut(context.db, input.applianceId)) return fail('not-standing', {});
    const open = input.kind === 'startup' ? findOpenStartup(context.db, input.applianceId) : undefined;
    if (open !== undefined) return fail('startup-open', { jobId: open.id });
    const jobId = context.write((writer) =>
      writer.insert(jobs, { ...input, openedAt: context.now, isChargeable: true }),
    );
    context.services.changed(['jobs']);
    return { jobId };
  },

  'jobs.list': (input, context) => {
    const rows = listJobs(context.db, {
      applianceId: input.applianceId,
      isWaiting: input.unplannedOnly,
      ...(input.jobIds === undefined ? {} : { jobIds: input.jobIds }),
    });
    const open = openReadinessOf(context.db, rows);
    const aged = agedReadinessOf(context.db, rows.flatMap(toAskedJob), companyToday(context));
    const notices = readOpenNotices(
      context.db,
      rows.map(({ appliance }) => appliance.id),
    );
    const listed = rows.map((row) => ({
      jobId: row.job.id,
      kind: row.job.kind as 'startup',
      applianceId: row.appliance.id,
      serial: row.appliance.serial,
      maker: row.appliance.maker,
      model: row.appliance.model,
      siteId: row.siteId,
      customerName: row.customerName,
      street: row.street,
      city: row.city,
      openedAt: row.job.openedAt,
      priority: row.job.priority,
      wantedToOn: row.job.wantedToOn,
      latestOn: row.job.latestOn,
      latestWhy: row.job.latestWhy,
      openReadiness: [...(open.get(row.job.id) ?? [])],
      agedReadiness: [...(aged.get(row.job.id) ?? [])],
      openMakeSafes: row.openMakeSafes,
      openNotices: [...(notices.get(row.appliance.id) ?? [])],
      visitId: row.visitId,
      returnBecause:
        row.visitId !== null || row.lastOutcome === 'finished' ? null : (row.lastOutcome as 'return-needed' | null),
    }));
    return input.unplannedOnly ? listed.toSorted(byPressing) : listed;
  },

  'jobs.getReadiness': (input, context) => {
    const [row] = listJobs(context.db, { applianceId: null, jobIds: [input.jobId] });
    if (row === undefined) return notFound('jobs', input.jobId);
    const given = new Map(listReadiness(context.db, [input.jobId]).map((one) => [one.answer.itemKey, one]));
    return {
      jobId: input.jobId,
      items: READINESS_ITEMS.map((item) => {
        const one = given.get(item.key);
        return {
          itemKey: item.key,
          answer: (one?.answer.answer ?? null) as 'yes' | null,
          note: one?.answer.note ?? null,
          confirmedBy: one?.answer.confirmedBy ?? null,
          recordedByName: one?.recordedByName ?? null,
          recordedAt: one?.answer.recordedAt ?? null,
        };
      }),
      aged: [...(agedReadinessOf(context.db, toAskedJob(row), companyToday(context)).get(input.jobId) ?? [])],
      gasLoad: row.siteId === null ? null : gasLoadOf(context.db, row.siteId),
    };
  },

  'jobs.setReadiness': (input, context) => {
    if (findJob(context.db, input.jobId) === undefined) return notFound('jobs', input.jobId);
    if (!READINESS_ITEMS.some((item) => item.key === input.itemKey))
      return fail('no-such-item', { stepKey: 'readiness', itemKey: input.itemKey });
    const actor = actorOf(context);
    context.write((writer) => {
      const row = { ...input, recordedById: actor.staffId, recordedAt: context.now };
      const existing = listReadiness(writer.db, [input.jobId]).find((one) => one.answer.itemKey === input.itemKey);
      if (existing === undefined) writer.insert(readinessAnswers, row);
      else writer.update(readinessAnswers, existing.answer.id, row);
    });
    context.services.changed(['jobs']);
    return {};
  },

  'jobs.askedAgain': (input, context) => {
    const again = { recordedById: actorOf(context).staffId, recordedAt: context.now };
    context.write((writer) => {
      const known = listReadiness(
        writer.db,
        input.answers.map(({ jobId }) => jobId),
      );
      for (const { jobId, itemKey } of input.answers) {
        const row = known.find(({ answer }) => answer.jobId === jobId && answer.itemKey === itemKey);
        if (row === undefined) return fail('no-such-item', { stepKey: 'readiness', itemKey });
        writer.update(readinessAnswers, row.answer.id, again);
      }
    });
    context.services.changed(['jobs']);
    return {};
  },

  'visits.whoMay': (input, context) => {
    const works = worksOfJobs(context.db, input.jobIds);
    const durationMin = input.durationMin ?? expectedMinutesOf(context.db, input.jobIds);
    return readWorkers(context.db, { from: input.on, to: input.on })
      .filter(({ roles }) => roles.some((role) => role === 'technician' || role === 'helper'))
      .filter(({ activeTo }) => activeTo === null || activeTo >= input.on)
      .map((worker) => {
        const { staffId, name } = worker;
        const obstacles = findObstacles(worker, works, { on: input.on, fromMin: input.startMin, durationMin });
        const licence = obstacles.find((one) => one.code === 'licence');
        return {
          staffId,
          name,
          problem: licence === undefined ? null : { staffId, name, why: licence.why, on: input.on },
          obstacles: [...obstacles],
        };
      });
  },

  'visits.book': (input, context) => {
    const { jobIds, crew, isPencilled, isPromised, ...fields } = input;
    requireTimes(fields);
    const siteId = oneSiteOf(context.db, jobIds);
    if (!isPencilled) requireReadiness(context.db, jobIds);
    requireLicensedCrew(context.db, jobIds, fields.plannedOn, crew);
    const visitId = context.write((writer) => {
      const id = writer.insert(visits, {
        siteId,
        state: isPencilled ? 'pencilled' : 'planned',
        ...fields,
        promisedOn: isPromised ? fields.plannedOn : null,
      });
      for (const jobId of jobIds) writer.insert(visitJobs, { visitId: id, jobId });
      for (const member of crew) writer.insert(visitCrew, { visitId: id, ...member });
      return id;
    });
    context.services.changed(['visits', 'jobs']);
    return { visitId };
  },

  'visits.update': (input, context) => {
    const { visitId, crew, isPencilled, baseRevision, startMin, ...fields } = input;
    const visit = requireNotBegun(context.db, visitId);
    requireUnchanged(context.db, visit, baseRevision);
    requireTimes(fields);
    const [row] = readVisitRows(context.db, { visitId });
    const jobIds = (row?.jobs ?? []).map((job) => job.jobId);
    if (!isPencilled) requireReadiness(context.db, jobIds);
    requireLicensedCrew(context.db, jobIds, fields.plannedOn, crew);
    context.write((writer) => {
      writer.update(visits, visitId, {
        ...fields,
        ...(startMin === undefined ? {} : { startMin }),
        state: isPencilled ? 'pencilled' : 'planned',
        revision: visit.revision + 1,
      });
      replaceCrew(writer, visitId, crew);
    });
    context.services.changed(['visits']);
    return {};
  },

  'visits.cancel': (input, context) => {
    const visit = requireNotBegun(context.db, input.visitId);
    context.write((writer) =>
      writer.update(visits, input.visitId, {
        state: 'cancelled',
        outcomeReason: input.reason,
        revision: visit.revision + 1,
      }),
    );
    context.services.changed(['visits', 'jobs']);
    return {};
  },

  'visits.list': (input, context) =>
    readVisitRows(context.db, { from: input.from, to: input.to }).filter(
      (row) => input.staffId === null || row.crew.some((member) => member.staffId === input.staffId),
    ),

  'visits.get': (input, context) => {
    const [row] = readVisitRows(context.db, { visitId: input.visitId });
    return row ?? notFound('visits', input.visitId);
  },
};

type Times = { readonly plannedFrom: string | null; readonly plannedTo: string | null };
export type Crew = readonly { readonly staffId: string; readonly role: VisitRow['crew'][number]['role'] }[];

function requireTimes({ plannedFrom, plannedTo }: Times): void {
  if (plannedFrom !== null && plannedTo !== null && plannedTo <= plannedFrom)
    fail('times-reversed', { plannedFrom, plannedTo });
}

/** Where the jobs' appliances stand: one visit goes to one site. */
export function oneSiteOf(db: ReadableDb, jobIds: readonly string[]): string {
  const rows = listJobs(db, { applianceId: null, jobIds });
  const missing = jobIds.find((jobId) => !rows.some((row) => row.job.id === jobId));
  if (missing !== undefined) return notFound('jobs', missing);
  if (rows.some(({ appliance }) => isTakenOut(db, appliance.id))) return fail('not-standing', {});
  const siteIds = new Set(rows.map((row) => row.siteId));
  const [siteId] = siteIds;
  if (siteIds.size !== 1 || siteId === undefined || siteId === null) return fail('jobs-on-several-sites', {});
  return siteId;
}

function requireReadiness(db: ReadableDb, jobIds: readonly string[]): void {
  const open = openReadinessOf(db, listJobs(db, { applianceId: null, jobIds }));
  const items = [...open].flatMap(([jobId, keys]) => keys.map((itemKey) => ({ jobId, itemKey })));
  if (items.length > 0) fail('readiness-open', { items });
}

/** What is done is not asked about any more. */
function toAskedJob({ job, visitOn }: ReturnType<typeof listJobs>[number]): readonly AskedJob[] {
  return job.closedAt === null ? [{ jobId: job.id, kind: job.kind, plannedOn: visitOn }] : [];
}

/** Only startups ask for readiness. */
export function openReadinessOf(
  db: ReadableDb,
  rows: readonly { readonly job: { readonly id: string; readonly kind: string } }[],
): ReadonlyMap<string, readonly string[]> {
  const startups = rows.filter((row) => row.job.kind === 'startup').map((row) => row.job.id);
  const answers = Map.groupBy(listReadiness(db, startups), (row) => row.answer.jobId);
  return new Map(
    startups.map((jobId) => {
      const closed = new Set(
        (answers.get(jobId) ?? [])
          .filter((row) => row.answer.answer === 'yes' || row.answer.answer === 'not-applicable')
          .map((row) => row.answer.itemKey),
      );
      return [
        jobId,
        READINESS_ITEMS.filter((item) => item.blocksBooking && !closed.has(item.key)).map((item) => item.key),
      ];
    }),
  );
}

function gasWorkOfJobs(db: ReadableDb, jobIds: readonly string[], on: string): readonly GasWork[] {
  return listJobs(db, { applianceId: null, jobIds }).map((row) => ({
    on,
    fuel: ((row.siteId === null ? undefined : findGasSupply(db, row.siteId)?.fuel) ??
      row.appliance.plateFuel) as FuelKey | null,
    ratedInputKw: row.appliance.ratedInputKw,
  }));
}

/** At least one of the crew may do the gas work; who is named as licensed must be. */
export function requireLicensedCrew(db: ReadableDb, jobIds: readonly string[], on: string, crew: Crew): void {
  for (const member of crew) if (findStaff(db, member.staffId) === undefined) notFound('staff', member.staffId);
  const work = gasWorkOfJobs(db, jobIds, on);
  const mayAll = (staffId: string): boolean => work.every((one) => !keepsFromWork(licenceProblemOf(db, staffId, one)));
  const named = crew.filter((member) => member.role === 'licensed');
  const lacking =
    named.find((member) => !mayAll(member.staffId)) ??
    (crew.some((member) => mayAll(member.staffId)) ? undefined : crew[0]);
  if (lacking !== undefined) for (const one of work) requireLicenceBeforeFiring(db, lacking.staffId, one);
}

export function requireNotBegun(db: ReadableDb, visitId: string): VisitRecord {
  const visit = findVisit(db, visitId) ?? notFound('visits', visitId);
  if (!['pencilled', 'planned', 'travelling'].includes(visit.state))
    fail('visit-begun', { state: visit.state as VisitRow['state'] });
  return visit;
}

/** A change is based on what was looked at: the work of somebody else is never overwritten unseen. */
export function requireUnchanged(db: ReadableDb, visit: VisitRecord, baseRevision: number | undefined): void {
  if (baseRevision === undefined || baseRevision === visit.revision) return;
  const { revision, plannedOn, startMin } = visit;
  fail('visit-changed', {
    revision,
    plannedOn,
    startMin,
    crew: listCrews(db, [visit.id]).map(({ name }) => name),
  });
}

export function replaceCrew(writer: StoreWriter, visitId: string, wanted: Crew): void {
  const current = listCrews(writer.db, [visitId]).map((row) => row.crew);
  for (const row of current)
    if (!wanted.some((member) => member.staffId === row.staffId)) writer.remove(visitCrew, row.id);
  for (const member of wanted) {
    const row = current.find((one) => one.staffId === member.staffId);
    if (row === undefined) writer.insert(visitCrew, { visitId, ...member });
    else writer.update(visitCrew, row.id, { role: member.role });
  }
}

/** Connected loads against the meter, both as kW gross: the meter's volume times the heating value. */
function gasLoadOf(db: ReadableDb, siteId: string): OutputOf<'jobs.getReadiness'>['gasLoad'] {
  const supply = findGasSupply(db, siteId);
  if (supply === undefined || supply.capacityM3PerH === null || supply.heatingValueMjPerM3 === null) return null;
  const loads = listGasLoads(db, supply.id);
  const known = loads.flatMap(({ inputKw }) => (inputKw === null ? [] : [inputKw]));
  if (known.length === 0) return null;
  const load = connectedGasLoad({
    loadsKwGross: known,
    heatingValueMjPerM3: supply.heatingValueMjPerM3,
    meterCapacityM3PerH: supply.capacityM3PerH,
  });
  if (!load.ok) return null;
  return {
    loadKw: load.value.loadKw,
    capacityKw: load.value.capacityKw,
    unknownLoads: loads.filter(({ inputKw }) => inputKw === null).map(({ name }) => name),
  };
}
