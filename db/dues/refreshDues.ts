/** Works the due rows of some or all appliances out again from the truth. */
import type { Database } from 'better-sqlite3';
import { type ApplianceDue, applianceDues } from '../../domain/coverage/applianceDues.ts';
import { areaOf } from '../../domain/service/roundMonth.ts';
import { rawStatement } from '../rawStatement.ts';
import { type DueSource, readDueFacts } from './readDueFacts.ts';

/** Grows whenever the rules give other rows for the same truth: every store then works them out again when it opens. */
export const DUE_RULES_VERSION = 5;

const CHUNK = 1000;
const STEP = 5000;

/** Inside the transaction that made them stale, so nobody ever reads rows that do not fit. */
export function refreshStaleDues(raw: Database, now: string): void {
  for (const _step of refreshStaleDuesInSteps(raw, now));
}

/** The same with a pause after every so many appliances. */
export function* refreshStaleDuesInSteps(
  raw: Database,
  now: string,
): Generator<{ readonly done: number; readonly of: number }> {
  const ids = rawStatement(raw, 'SELECT appliance_id FROM stale_dues').pluck().all() as string[];
  if (ids.length === 0) return;
  for (let from = 0; from < ids.length; from += CHUNK) {
    refreshDues(raw, ids.slice(from, from + CHUNK), now);
    yield { done: Math.min(from + CHUNK, ids.length), of: ids.length };
  }
  rawStatement(raw, 'DELETE FROM stale_dues').run();
}

/** One step of working everything out anew: the appliances after this one, in order. null: that was the last step. */
export function rebuildDuesAfter(raw: Database, now: string, after: string | null, limit: number): string | null {
  const ids = idsAfter(raw, after, limit);
  for (let from = 0; from < ids.length; from += CHUNK) refreshDues(raw, ids.slice(from, from + CHUNK), now);
  return ids.length === limit ? (ids.at(-1) ?? null) : null;
}

/** How far that is: all appliances, and those it has come past. */
export function countRebuilt(raw: Database, after: string | null): { readonly total: number; readonly done: number } {
  return rawStatement(
    raw,
    'SELECT count(*) AS total, coalesce(sum(? IS NULL OR id <= ?), 0) AS done FROM appliances',
  ).get(after, after) as { total: number; done: number };
}

/** The same into an empty table: nothing to compare with, and many rows in one statement. */
function fillDuesAfter(raw: Database, now: string, after: string | null): string | null {
  const ids = idsAfter(raw, after, STEP);
  for (let from = 0; from < ids.length; from += CHUNK) {
    const rows = readDueFacts(raw, ids.slice(from, from + CHUNK), now).flatMap((source) =>
      applianceDues(source.facts).map((due) => columnsOf(source, due)),
    );
    insertRows(raw, rows);
  }
  return ids.length === STEP ? (ids.at(-1) ?? null) : null;
}

function idsAfter(raw: Database, after: string | null, limit: number): readonly string[] {
  return rawStatement(raw, 'SELECT id FROM appliances WHERE id > ? ORDER BY id LIMIT ?')
    .pluck()
    .all(after ?? '', limit) as string[];
}

/** SQLite takes some 32 000 values in one statement. */
const ROWS_AT_ONCE = 200;

function insertRows(raw: Database, rows: readonly Row[]): void {
  const many = rawStatement(raw, INSERT_MANY);
  const one = rawStatement(raw, INSERT);
  let from = 0;
  for (; from + ROWS_AT_ONCE <= rows.length; from += ROWS_AT_ONCE) {
    many.run(rows.slice(from, from + ROWS_AT_ONCE).flat());
  }
  for (const row of rows.slice(from)) one.run(row);
}

/** At opening: an older version's rows, or none at all, are replaced. */
export function ensureDues(raw: Database, now: string): void {
  const version = raw.prepare("SELECT rules_version FROM derived_tables WHERE name = 'appliance_dues'").pluck().get();
  if (version !== DUE_RULES_VERSION) rebuildAllDues(raw, now);
}

/** Everything at once, from empty: with the indexes built at the end it takes half the time of row by row. */
export function rebuildAllDues(raw: Database, now: string, onStep: (after: string) => void = () => {}): void {
  const indexes = raw
    .prepare(
      "SELECT name, sql FROM sqlite_schema WHERE tbl_name = 'appliance_dues' AND type = 'index' AND sql IS NOT NULL",
    )
    .all() as { readonly name: string; readonly sql: string }[];
  raw
    .transaction(() => {
      raw.exec('DELETE FROM appliance_dues; DELETE FROM registration_gaps');
      for (const { name } of indexes) raw.exec(`DROP INDEX ${name}`);
      for (let after = fillDuesAfter(raw, now, null); after !== null; ) {
        onStep(after);
        after = fillDuesAfter(raw, now, after);
      }
      for (const { sql } of indexes) raw.exec(sql);
      raw
        .prepare(
          "INSERT INTO derived_tables (name, rules_version) VALUES ('appliance_dues', ?) ON CONFLICT DO UPDATE SET rules_version = excluded.rules_version",
        )
        .run(DUE_RULES_VERSION);
    })
    .immediate();
}

/** Rows that stay as they are are not written: most writes change no due day. */
function refreshDues(raw: Database, ids: readonly string[], now: string): void {
  const remove = rawStatement(raw, 'DELETE FROM appliance_dues WHERE appliance_id = ?');
  const insert = rawStatement(raw, INSERT);
  const kept = Map.groupBy(
    rawStatement(raw, KEPT).raw().all(JSON.stringify(ids)) as Row[],
    ([applianceId]) => applianceId,
  );
  const sources = new Map(readDueFacts(raw, ids, now).map((source) => [source.applianceId, source]));
  for (const id of ids) {
    const source = sources.get(id);
    const rows = source === undefined ? [] : applianceDues(source.facts).map((due) => columnsOf(source, due));
    const before = kept.get(id) ?? [];
    if (isSame(before, rows)) continue;
    if (before.length > 0) remove.run(id);
    for (const row of rows) insert.run(row);
  }
}

type Row = readonly (string | number | null)[];

function isSame(before: readonly Row[], after: readonly Row[]): boolean {
  return (
    before.length === after.length &&
    after.every((row) => {
      const [, kind] = row;
      const same = before.find((one) => one[1] === kind);
      return same !== undefined && row.every((value, column) => value === same[column]);
    })
  );
}

const KEPT = `SELECT d.* FROM json_each(?) each JOIN appliance_dues d ON d.appliance_id = each.value`;

const INTO = `
  INSERT INTO appliance_dues (appliance_id, kind, is_open, window_from, due_on, latest_on, gone_on, sureness, stage, month,
    area, maker, staff_id, time_zone, job_id, visit_id, booked_on) VALUES`;
const PLACES = '(?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)';
const INSERT = `${INTO} ${PLACES}`;
const INSERT_MANY = `${INTO} ${Array.from({ length: ROWS_AT_ONCE }, () => PLACES).join(', ')}`;

/** In the order of the table's columns. */
function columnsOf(source: DueSource, due: ApplianceDue): Row {
  const isRegistration = due.kind === 'registration';
  const work = isRegistration
    ? { jobId: source.registrationWork.jobId, visitId: source.registrationWork.visitId, on: null }
    : due.kind === 'service'
      ? source.openService
      : null;
  return [
    source.applianceId,
    due.kind,
    due.isOpen ? 1 : 0,
    due.windowFrom,
    due.dueOn,
    due.latestOn,
    due.goneOn,
    due.sureness,
    due.stage,
    due.month,
    areaOf(source.postcode) ?? '',
    source.maker,
    isRegistration ? source.registrationWork.staffId : null,
    source.timeZone,
    work?.jobId ?? null,
    work?.visitId ?? null,
    work?.on ?? null,
  ];
}
