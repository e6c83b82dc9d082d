/** What a day sheet says, gathered for one person and day. */
import { findAppliance, listMakeSafes } from '../../db/appliances.ts';
import { findCustomer } from '../../db/customers.ts';
import type { ReadableDb } from '../../db/openStore.ts';
import { findCompany } from '../../db/people.ts';
import { listSitePlaces } from '../../db/planning.ts';
import { findNewestRevision } from '../../db/sheets.ts';
import { findVisit } from '../../db/visits.ts';
import { readinessLabel } from '../../domain/procedure/readiness.ts';
import { toTravelTable } from '../../domain/schedule/travelTable.ts';
import { boardStart, wallMinute } from '../../domain/schedule/wallClock.ts';
import { wayMinutes } from '../../domain/schedule/wayMinutes.ts';
import { baseWayPlace, wayPlaceOf } from '../../domain/schedule/wayPlace.ts';
import type { BoardJob, BoardVisit } from '../contract/board.ts';
import { clockText, type DaySheet, type DaySheetStop } from '../documents/daySheet/daySheetBlocks.ts';
import { vanParts } from '../documents/daySheet/vanParts.ts';
import { weekdayText } from '../documents/documentDates.ts';
import { readBoardVisits, readTravel } from './boardRows.ts';
import { notFound } from './handler.ts';
import { readWorkers } from './workers.ts';

const KIND_TEXT: Readonly<Record<BoardJob['kind'], string>> = {
  startup: 'Startup',
  service: 'Annual service',
  repair: 'Repair',
  'follow-up': 'Follow-up',
};

export function readDaySheet(db: ReadableDb, staffId: string, on: string): DaySheet {
  const company = findCompany(db) ?? notFound('companies', 'this');
  const worker = readWorkers(db, { from: on, to: on }).find((one) => one.staffId === staffId);
  const visits = readBoardVisits(db, { from: on, to: on }, on)
    .filter((visit) => visit.crew.some((member) => member.staffId === staffId))
    .toSorted((a, b) => (boardStart(a) ?? 0) - (boardStart(b) ?? 0));
  const travel = readTravel(db);
  const times = { ...travel, table: toTravelTable(travel.pairs) };
  const base = baseWayPlace(worker?.name ?? '', worker?.base ?? NOWHERE, travel.firm);
  const stops: DaySheetStop[] = [];
  let from = base;
  for (const visit of visits) {
    const place = wayPlaceOf(visit);
    stops.push(toStop(db, visit, wayMinutes(from, place, times)));
    from = place;
  }
  const endMin = stops.at(-1)?.toMin ?? null;
  const wayHome = visits.length === 0 ? null : wayMinutes(from, base, times);
  return {
    companyName: company.name,
    technicianName: worker?.name ?? '',
    dayText: weekdayText(on),
    stops,
    homeMin: endMin === null || wayHome === null ? null : Math.min(1439, endMin + wayHome),
  };
}

export function jobText(job: BoardJob): string {
  return `${KIND_TEXT[job.kind]} ${job.model}`;
}

const NOWHERE = { street: null, postcode: null, city: null, latitude: null, longitude: null };

function toStop(db: ReadableDb, visit: BoardVisit, wayMin: number | null): DaySheetStop {
  const [site] = listSitePlaces(db, [visit.siteId]);
  const customer = findCustomer(db, visit.customerId);
  const fromMin = boardStart(visit);
  return {
    fromMin,
    toMin: fromMin === null ? null : Math.min(1440, fromMin + visit.durationMin),
    wayMin,
    promised: promisedText(visit),
    state: visit.state,
    customerName: visit.customerName,
    phone: customer?.party.phoneTyped ?? null,
    address: [visit.street, [site?.postcode, visit.city].filter(Boolean).join(' ')].join(', '),
    access: site?.access ?? null,
    crew: visit.crew.map(({ name }) => name),
    note: findVisit(db, visit.visitId)?.note ?? null,
    jobs: visit.jobs.map((job) => {
      const sheetId = findAppliance(db, job.applianceId)?.sheetId ?? null;
      const revision = sheetId === null ? undefined : findNewestRevision(db, sheetId);
      return {
        kind: KIND_TEXT[job.kind],
        appliance: `${job.maker} ${job.model}`,
        serial: job.serial,
        fuel: job.fuel?.replaceAll('-', ' ') ?? null,
        inputKw: job.ratedInputKw,
        sheet: revision === undefined ? null : `${revision.title}, revision ${revision.revision}`,
        parts: vanParts(job.kind),
        readinessGaps: job.openReadiness.map(readinessLabel),
        readinessAged: job.agedReadiness.map(
          ({ itemKey, askedDaysAgo }) => `${readinessLabel(itemKey)}: asked ${askedDaysAgo} days ago`,
        ),
        makeSafes: listMakeSafes(db, job.applianceId)
          .filter(({ makeSafe }) => makeSafe.closedAt === null)
          .map(
            ({ makeSafe }) => `${makeSafe.what}${makeSafe.isolatedHow === null ? '' : ` (${makeSafe.isolatedHow})`}`,
          ),
      };
    }),
  };
}

function promisedText({ promisedOn, plannedOn, plannedFrom, plannedTo }: BoardVisit): string | null {
  if (promisedOn === null) return null;
  const [from, to] = [wallMinute(plannedFrom), wallMinute(plannedTo)];
  const window = [from, to].flatMap((minute) => (minute === null ? [] : [clockText(minute)])).join('–');
  return [promisedOn === plannedOn ? null : weekdayText(promisedOn), window || 'some time that day']
    .filter((part) => part !== null)
    .join(', ');
}
