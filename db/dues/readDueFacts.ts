/** What the due rows of some appliances are worked out from, read in a few statements for all of them. */
import type { Database } from 'better-sqlite3';
import type { DueFacts, RegistrationStage } from '../../domain/coverage/applianceDues.ts';
import type { KnownDate } from '../../domain/coverage/dateOrder.ts';
import { dayAt } from '../../domain/coverage/dayAt.ts';
import { addDays } from '../../domain/coverage/period.ts';
import type { ModelSheet } from '../../domain/procedure/modelSheet.ts';
import { serviceRuleOf } from '../../domain/service/serviceRule.ts';
import { rawStatement } from '../rawStatement.ts';

export type DueSource = {
  readonly applianceId: string;
  readonly facts: DueFacts;
  readonly maker: string;
  readonly postcode: string | null;
  readonly timeZone: string;
  /** What its registration rests on. */
  readonly registrationWork: {
    readonly jobId: string | null;
    readonly visitId: string | null;
    /** Who led the last visit; not looked up once the maker has confirmed. */
    readonly staffId: string | null;
  };
  /** A service that is opened or booked and not done. */
  readonly openService: { readonly jobId: string; readonly visitId: string | null; readonly on: string | null } | null;
};

/** Contacts of the first year are kept a second one; wide enough that a clock set wrong for months loses none. */
const CONTACT_DAYS = 800;

export function readDueFacts(raw: Database, applianceIds: readonly string[], now: string): readonly DueSource[] {
  const contactsSince = addDays(now.slice(0, 10), -CONTACT_DAYS);
  const ids = JSON.stringify(applianceIds);
  const dates = grouped<DateRow>(raw, DATES, ids);
  const visits = grouped<VisitRow>(raw, VISITS, ids);
  const contacts = grouped<ContactRow>(raw, CONTACTS, ids);
  const sheets = new Map<string | null, Sheet | null>();
  return (rawStatement(raw, APPLIANCES).all(ids) as ApplianceRow[]).map((row) => {
    const work = visits.get(row.applianceId) ?? [];
    const timeZone = row.timeZone ?? 'UTC';
    const finished = work.filter(({ outcome }) => outcome === 'finished');
    if (!sheets.has(row.sheetId)) sheets.set(row.sheetId, sheetOf(raw, row.sheetId));
    const sheet = sheets.get(row.sheetId) ?? null;
    const ofRegistration = work.findLast(({ jobId, visitId }) => jobId === row.registrationJobId && visitId !== null);
    return {
      applianceId: row.applianceId,
      facts: {
        cover: sheet?.cover ?? null,
        serviceRule: serviceRuleOf(sheet),
        dates: dates.get(row.applianceId) ?? [],
        stage: row.stage ?? 'not-begun',
        servicesOn: finished.filter(({ kind }) => kind === 'service').map((visit) => visitDay(visit, timeZone)),
        visitsOn: finished.map((visit) => visitDay(visit, timeZone)),
        contactsSince,
        closedContacts: (contacts.get(row.applianceId) ?? []).map(({ kind }) => kind),
        isPlaced: row.isPlaced === 1,
      },
      maker: row.maker,
      postcode: row.postcode,
      timeZone,
      registrationWork: {
        jobId: row.registrationJobId,
        visitId: ofRegistration?.visitId ?? null,
        staffId: row.stage === 'confirmed' ? null : staffOf(raw, ofRegistration),
      },
      openService: openServiceOf(work),
    };
  });
}

const EACH = 'FROM json_each(?) each JOIN';

const APPLIANCES = `
  SELECT a.id AS applianceId, a.sheet_id AS sheetId, a.maker, s.time_zone AS timeZone, s.postcode,
    p.id IS NOT NULL AS isPlaced, r.state AS stage, r.job_id AS registrationJobId
  ${EACH} appliances a ON a.id = each.value
  LEFT JOIN placements p ON p.appliance_id = a.id AND p.to_on IS NULL
  LEFT JOIN sites s ON s.id = p.site_id
  LEFT JOIN registrations r ON r.appliance_id = a.id`;

const DATES = `
  SELECT d.appliance_id AS applianceId, d.kind, d.happened_on AS "on", d.precision
  ${EACH} appliance_dates d ON d.appliance_id = each.value`;

const VISITS = `
  SELECT j.appliance_id AS applianceId, j.id AS jobId, j.kind, j.closed_at AS closedAt, v.id AS visitId,
    v.planned_on AS plannedOn, v.started_at AS startedAt, v.outcome
  ${EACH} jobs j ON j.appliance_id = each.value
  LEFT JOIN visit_jobs l ON l.job_id = j.id
  LEFT JOIN visits v ON v.id = l.visit_id AND v.state <> 'cancelled'
  ORDER BY v.planned_on, v.id`;

const CONTACTS = `
  SELECT c.appliance_id AS applianceId, c.kind ${EACH} first_year_contacts c ON c.appliance_id = each.value`;

/** Who led; else who was licensed; else anybody. */
const CREW = `
  SELECT staff_id FROM visit_crew WHERE visit_id = ? ORDER BY role <> 'lead', role <> 'licensed', id LIMIT 1`;

const NEWEST_SHEET = `
  SELECT id FROM sheet_revisions WHERE sheet_id = ?
  ORDER BY substr(revision, 1, 7) DESC, CAST(substr(revision, 9) AS INTEGER) DESC LIMIT 1`;
const COVER_OF_SHEET = "SELECT maker, json_extract(body, '$.cover') AS cover FROM sheet_revisions WHERE id = ?";

type ApplianceRow = {
  readonly applianceId: string;
  readonly sheetId: string | null;
  readonly maker: string;
  readonly timeZone: string | null;
  readonly postcode: string | null;
  readonly isPlaced: 0 | 1;
  readonly stage: RegistrationStage | null;
  readonly registrationJobId: string | null;
};
type DateRow = KnownDate & { readonly applianceId: string };
type VisitRow = {
  readonly applianceId: string;
  readonly jobId: string;
  readonly kind: string;
  readonly closedAt: string | null;
  readonly visitId: string | null;
  readonly plannedOn: string | null;
  readonly startedAt: string | null;
  readonly outcome: string | null;
};
type ContactRow = { readonly applianceId: string; readonly kind: 'first-call' | 'look-in' };

function grouped<Row extends { readonly applianceId: string }>(
  raw: Database,
  sql: string,
  ids: string,
): ReadonlyMap<string, Row[]> {
  return Map.groupBy(rawStatement(raw, sql).all(ids) as Row[], ({ applianceId }) => applianceId);
}

/** The day it was done there; imported ones have only the day they were planned for. */
function visitDay({ startedAt, plannedOn }: VisitRow, timeZone: string): string {
  return startedAt === null ? (plannedOn ?? '') : dayAt(timeZone, startedAt);
}

function staffOf(raw: Database, visit: VisitRow | undefined): string | null {
  if (visit === undefined || visit.visitId === null) return null;
  return (rawStatement(raw, CREW).pluck().get(visit.visitId) as string | undefined) ?? null;
}

function openServiceOf(work: readonly VisitRow[]): DueSource['openService'] {
  const open = work.filter(
    ({ kind, closedAt, outcome }) => kind === 'service' && closedAt === null && outcome === null,
  );
  const chosen = open.findLast(({ visitId }) => visitId !== null) ?? open.at(-1);
  return chosen === undefined ? null : { jobId: chosen.jobId, visitId: chosen.visitId, on: chosen.plannedOn };
}

type Sheet = Pick<ModelSheet, 'cover' | 'maker'>;
const sheetsOf = new WeakMap<Database, Map<string, Sheet>>();

/** A revision never changes: each one's cover is parsed once. */
function sheetOf(raw: Database, sheetId: string | null): Sheet | null {
  if (sheetId === null) return null;
  const id = rawStatement(raw, NEWEST_SHEET).pluck().get(sheetId) as string | undefined;
  if (id === undefined) return null;
  const known = sheetsOf.get(raw) ?? new Map<string, Sheet>();
  sheetsOf.set(raw, known);
  const found = known.get(id);
  if (found !== undefined) return found;
  const row = rawStatement(raw, COVER_OF_SHEET).get(id) as {
    readonly maker: string | null;
    readonly cover: string | null;
  };
  const made: Sheet = {
    maker: row.maker,
    cover: row.cover === null ? null : (JSON.parse(row.cover) as Sheet['cover']),
  };
  known.set(id, made);
  return made;
}
