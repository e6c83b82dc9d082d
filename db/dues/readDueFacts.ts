/** What the due rows of some appliances are worked out from, read in a few statements for all of them. */
import type { Database } from 'better-sqlite3';
import type { DueFacts, RegistrationStage } from '../../domain/coverage/applianceDues.ts';
import {
  type CoverRevision,
  coverRevision,
  oldestFirst,
  type SheetIssue,
} from '../../domain/coverage/coverRevision.ts';
import { dayAt } from '../../domain/coverage/dayAt.ts';
import type { KnownDate } from '../../domain/coverage/knownDate.ts';
import { addDays } from '../../domain/coverage/period.ts';
import type { ModelSheet } from '../../domain/procedure/modelSheet.ts';
import type { ServiceAgreement } from '../../domain/service/serviceAgreement.ts';
import { serviceRuleOf } from '../../domain/service/serviceRule.ts';
import { rawStatement } from '../rawStatement.ts';

export type DueSource = {
  readonly applianceId: string;
  readonly facts: DueFacts;
  /** Whose terms those are; null without a sheet. */
  readonly coverRevision: CoverRevision | null;
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

/** In the order of the ids. Rows come as arrays with the position of their appliance: half the time of named columns, and it shows at 100 000. */
export function readDueFacts(raw: Database, applianceIds: readonly string[], now: string): readonly DueSource[] {
  const contactsSince = addDays(now.slice(0, 10), -CONTACT_DAYS);
  const ids = JSON.stringify(applianceIds);
  const read = (sql: string): unknown[] => rawStatement(raw, sql).raw().all(ids);
  const dates = byPosition(read(DATES) as DateRow[], ([, kind, on, precision]) => ({ kind, on, precision }));
  const visits = byPosition(read(VISITS) as VisitColumns[], toVisitRow);
  const contacts = byPosition(read(CONTACTS) as ContactRow[], ([, kind]) => kind);
  const agreements = byPosition(read(AGREEMENTS) as AgreementRow[], toAgreement);
  const startedWith = new Map(read(STARTED_WITH) as (readonly [at: number, revisionId: string])[]);
  const issues = new Map<string, readonly SheetIssue[]>();
  return (read(APPLIANCES) as ApplianceColumns[]).map((columns) => {
    const [at, sheetId, maker, ownZone, postcode, isPlaced, stage, registrationJobId] = columns;
    const work = (visits[at] ?? NONE).toSorted(byDay);
    const timeZone = ownZone ?? 'UTC';
    const finished = work.filter(({ outcome }) => outcome === 'finished');
    const chosen =
      sheetId === null
        ? null
        : coverRevision({
            issues: issues.get(sheetId) ?? keep(issues, sheetId, issuesOf(raw, sheetId)),
            startedWithId: startedWith.get(at) ?? null,
            dates: dates[at] ?? NONE,
          });
    const sheet = chosen === null ? null : sheetOf(raw, chosen.id);
    const ofRegistration = work.findLast(({ jobId, visitId }) => jobId === registrationJobId && visitId !== null);
    return {
      applianceId: applianceIds[at] ?? '',
      facts: {
        cover: sheet?.cover ?? null,
        serviceRule: serviceRuleOf(sheet),
        dates: dates[at] ?? NONE,
        agreements: agreements[at] ?? NONE,
        stage: stage ?? 'not-begun',
        servicesOn: finished.filter(({ kind }) => kind === 'service').map((visit) => visitDay(visit, timeZone)),
        visitsOn: finished.map((visit) => visitDay(visit, timeZone)),
        contactsSince,
        closedContacts: contacts[at] ?? NONE,
        isPlaced: isPlaced === 1,
      },
      coverRevision: chosen,
      maker,
      postcode,
      timeZone,
      registrationWork: {
        jobId: registrationJobId,
        visitId: ofRegistration?.visitId ?? null,
        staffId: stage === 'confirmed' ? null : staffOf(raw, ofRegistration),
      },
      openService: openServiceOf(work),
    };
  });
}

const EACH = 'FROM json_each(?) each JOIN';

const APPLIANCES = `
  SELECT each.key, a.sheet_id, a.maker, s.time_zone, s.postcode, p.id IS NOT NULL, r.state, r.job_id
  ${EACH} appliances a ON a.id = each.value
  LEFT JOIN placements p ON p.appliance_id = a.id AND p.to_on IS NULL
  LEFT JOIN sites s ON s.id = p.site_id
  LEFT JOIN registrations r ON r.appliance_id = a.id
  ORDER BY each.key`;

const DATES = `
  SELECT each.key, d.kind, d.happened_on, d.precision ${EACH} appliance_dates d ON d.appliance_id = each.value`;

const VISITS = `
  SELECT each.key, j.id, j.kind, j.closed_at, v.id, v.planned_on, v.started_at, v.outcome
  ${EACH} jobs j ON j.appliance_id = each.value
  LEFT JOIN visit_jobs l ON l.job_id = j.id
  LEFT JOIN visits v ON v.id = l.visit_id AND v.state <> 'cancelled'`;

const CONTACTS = `SELECT each.key, c.kind ${EACH} first_year_contacts c ON c.appliance_id = each.value`;

const AGREEMENTS = `
  SELECT each.key, s.id, s.number, s.every_months, s.from_on, s.to_on
  ${EACH} service_agreements s ON s.appliance_id = each.value`;

/** Who led; else who was licensed; else anybody. */
const CREW = `
  SELECT staff_id FROM visit_crew WHERE visit_id = ? ORDER BY role <> 'lead', role <> 'licensed', id LIMIT 1`;

/** The startup that was sealed, else the one begun first; the one that counts last, so that a map keeps it. */
const STARTED_WITH = `
  SELECT each.key, r.sheet_revision_id
  ${EACH} jobs j ON j.appliance_id = each.value AND j.kind = 'startup'
  JOIN runs r ON r.job_id = j.id
  ORDER BY r.sealed_at IS NOT NULL, r.started_at DESC`;

const ISSUES = 'SELECT id, revision FROM sheet_revisions WHERE sheet_id = ?';
const COVER_OF_SHEET = "SELECT maker, json_extract(body, '$.cover') AS cover FROM sheet_revisions WHERE id = ?";

type ApplianceColumns = readonly [
  at: number,
  sheetId: string | null,
  maker: string,
  timeZone: string | null,
  postcode: string | null,
  isPlaced: 0 | 1,
  stage: RegistrationStage | null,
  registrationJobId: string | null,
];
type DateRow = readonly [at: number, kind: KnownDate['kind'], on: KnownDate['on'], precision: KnownDate['precision']];
type VisitColumns = readonly [
  at: number,
  jobId: string,
  kind: string,
  closedAt: string | null,
  visitId: string | null,
  plannedOn: string | null,
  startedAt: string | null,
  outcome: string | null,
];
type VisitRow = {
  readonly jobId: string;
  readonly kind: string;
  readonly closedAt: string | null;
  readonly visitId: string | null;
  readonly plannedOn: string | null;
  readonly startedAt: string | null;
  readonly outcome: string | null;
};
type AgreementRow = readonly [
  at: number,
  agreementId: string,
  number: string | null,
  everyMonths: number,
  fromOn: string,
  toOn: string | null,
];
type ContactRow = readonly [at: number, kind: 'first-call' | 'look-in'];

const NONE: readonly never[] = [];

/** The rows of each appliance, by its place in the list that was asked for: the first column. */
function byPosition<Columns extends readonly [at: number, ...unknown[]], Row>(
  rows: readonly Columns[],
  toRow: (columns: Columns) => Row,
): readonly (readonly Row[] | undefined)[] {
  const found: Row[][] = [];
  for (const columns of rows) {
    const [at] = columns;
    const row = toRow(columns);
    const before = found[at];
    if (before === undefined) found[at] = [row];
    else before.push(row);
  }
  return found;
}

function toVisitRow(columns: VisitColumns): VisitRow {
  const [, jobId, kind, closedAt, visitId, plannedOn, startedAt, outcome] = columns;
  return { jobId, kind, closedAt, visitId, plannedOn, startedAt, outcome };
}

function toAgreement([, agreementId, number, everyMonths, fromOn, toOn]: AgreementRow): ServiceAgreement {
  return { agreementId, number, everyMonths, fromOn, toOn };
}

/** By the day they were planned for; jobs without a visit first. */
function byDay(a: VisitRow, b: VisitRow): number {
  return compare(a.plannedOn ?? '', b.plannedOn ?? '') || compare(a.visitId ?? '', b.visitId ?? '');
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
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

function issuesOf(raw: Database, sheetId: string): readonly SheetIssue[] {
  return oldestFirst(rawStatement(raw, ISSUES).all(sheetId) as SheetIssue[]);
}

function keep<K, V>(map: Map<K, V>, key: K, value: V): V {
  map.set(key, value);
  return value;
}

/** A revision never changes: each one's cover is parsed once. */
function sheetOf(raw: Database, id: string): Sheet {
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
