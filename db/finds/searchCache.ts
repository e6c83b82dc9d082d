/**
 * A cache behind "search as you type": for each row of its kind a serial with look-alikes folded and the folded words by
 * which people ask for it, with a full-text table over every run of three letters. Kept by triggers; it is no truth: taken
 * away before a migration, which may rebuild the tables it listens to, and filled again afterwards.
 *
 * Each word stands after two blanks, so that the beginning of a word is a run of three letters as well: `␣␣k` finds
 * Kestrel from the first key on.
 */
import type { Database } from 'better-sqlite3';
import { searchTerms } from '../../domain/text/foldForSearch.ts';
import { serialKeyOf } from '../../domain/text/serialKey.ts';
import { rawStatement } from '../rawStatement.ts';

export type SearchCache = {
  readonly table: string;
  readonly idColumn: string;
  readonly parts: readonly Part[];
};

export type Part = readonly [kind: 'TABLE' | 'VIEW' | 'TRIGGER', name: string, definition: string];

/** Under three letters the full-text table knows nothing but beginnings. */
const SHORTEST_INSIDE = 3;
const WORD_BEGINS = '  ';

/** The page of ids that have every word of the query, or all of it as a serial, in the order they were filed; null: nothing was asked. */
export function findIds(
  raw: Database,
  cache: SearchCache,
  { query, limit, after }: { readonly query: string; readonly limit: number; readonly after: string | null },
): readonly string[] | null {
  const match = matchOf(query);
  if (match === null) return null;
  return rawStatement(
    raw,
    `SELECT f.${cache.idColumn} FROM ${cache.table}_text CROSS JOIN ${cache.table} f ON f.number = ${cache.table}_text.rowid
     WHERE ${cache.table}_text MATCH ?
       AND ${cache.table}_text.rowid > coalesce((SELECT number FROM ${cache.table} WHERE ${cache.idColumn} = ?), 0)
     ORDER BY ${cache.table}_text.rowid LIMIT ?`,
  )
    .pluck()
    .all(match, after, limit) as string[];
}

function matchOf(query: string): string | null {
  const terms = searchTerms(query);
  if (terms.length === 0) return null;
  const every = terms.map((term) => `(${[inWords(term), ...inSerial(term)].join(' OR ')})`).join(' AND ');
  return terms.length === 1 ? every : [`(${every})`, ...inSerial(query)].join(' OR ');
}

function inWords(term: string): string {
  return `words : ${quoted(term)}`;
}

function inSerial(text: string): readonly string[] {
  const key = serialKeyOf(text);
  return key === '' ? [] : [`serial_key : ${quoted(key)}`];
}

function quoted(text: string): string {
  const run = text.length < SHORTEST_INSIDE ? `${WORD_BEGINS}${text}` : text;
  return `"${run.replaceAll('"', '""')}"`;
}

/** Makes what is missing of it or was made by another version, and fills it when anything was. */
export function ensureSearchCache(raw: Database, cache: SearchCache): void {
  const present = new Map(
    raw.prepare('SELECT name, sql FROM sqlite_schema').raw().all() as [name: string, sql: string | null][],
  );
  if (cache.parts.every(([, name, definition]) => present.get(name) === definition)) return;
  raw.transaction(() => {
    dropSearchCache(raw, cache);
    for (const _filled of fillSearchCache(raw, cache));
  })();
}

const FILLED_AT_ONCE = 2000;

/** Makes one that was dropped and fills it, so many rows at a time; answers how many are in after each. */
export function* fillSearchCache(raw: Database, cache: SearchCache): Generator<number> {
  for (const [, , definition] of cache.parts) raw.exec(definition);
  const { table, idColumn } = cache;
  const fill = raw.prepare(
    `INSERT INTO ${table} (${idColumn}, serial_key, words)
     SELECT ${idColumn}, serial_key, words FROM ${rowsView(table)} WHERE ${idColumn} > ? ORDER BY ${idColumn} LIMIT ${FILLED_AT_ONCE}`,
  );
  const lastId = raw.prepare(`SELECT ${idColumn} FROM ${table} ORDER BY number DESC LIMIT 1`).pluck();
  let filled = 0;
  for (let after = '', count = FILLED_AT_ONCE; count === FILLED_AT_ONCE; filled += count) {
    count = fill.run(after).changes;
    after = (lastId.get() as string | undefined) ?? '';
    yield filled + count;
  }
}

export function dropSearchCache(raw: Database, cache: SearchCache): void {
  for (const [kind, name] of cache.parts.toReversed()) raw.exec(`DROP ${kind} IF EXISTS ${name}`);
}

/** `appliance_finds`: `appliance_find_rows`. */
function rowsView(table: string): string {
  return table.replace(/s$/, '_rows');
}

/** The tables, and the view that says from the truth what belongs into them. */
export function cacheTables(of: {
  readonly table: string;
  readonly idColumn: string;
  /** Expressions over `from`; serials and words apart by single blanks. */
  readonly idSql: string;
  readonly serialsSql: string;
  readonly wordsSql: string;
  readonly from: string;
}): readonly Part[] {
  const { table, idColumn } = of;
  const spaced = (sql: string): string => `'${WORD_BEGINS}' || replace(${sql}, ' ', '${WORD_BEGINS}')`;
  const remove = `INSERT INTO ${table}_text (${table}_text, rowid, serial_key, words) VALUES ('delete', old.number, old.serial_key, old.words)`;
  const add = `INSERT INTO ${table}_text (rowid, serial_key, words) VALUES (new.number, new.serial_key, new.words)`;
  return [
    [
      'TABLE',
      table,
      `CREATE TABLE ${table} (number INTEGER PRIMARY KEY, ${idColumn} TEXT NOT NULL UNIQUE, serial_key TEXT NOT NULL, words TEXT NOT NULL) STRICT`,
    ],
    [
      'TABLE',
      `${table}_text`,
      `CREATE VIRTUAL TABLE ${table}_text USING fts5(serial_key, words, content='${table}', content_rowid='number', tokenize='trigram remove_diacritics 1')`,
    ],
    [
      'VIEW',
      rowsView(table),
      `CREATE VIEW ${rowsView(table)} AS SELECT ${of.idSql} AS ${idColumn}, ${spaced(of.serialsSql)} AS serial_key, ${spaced(of.wordsSql)} AS words FROM ${of.from}`,
    ],
    cacheTrigger(`${table}_added`, `AFTER INSERT ON ${table}`, add),
    cacheTrigger(`${table}_removed`, `AFTER DELETE ON ${table}`, remove),
    cacheTrigger(
      `${table}_changed`,
      `AFTER UPDATE ON ${table} WHEN old.serial_key <> new.serial_key OR old.words <> new.words`,
      `${remove}; ${add}`,
    ),
  ];
}

export function cacheTrigger(name: string, when: string, body: string): Part {
  return ['TRIGGER', name, `CREATE TRIGGER ${name} ${when} BEGIN ${body}; END`];
}

/** Fills the row of a new record. */
export function addToCache(table: string, idColumn: string, id: string): string {
  return `INSERT INTO ${table} (${idColumn}, serial_key, words) SELECT ${idColumn}, serial_key, words FROM ${rowsView(table)} WHERE ${idColumn} = ${id}`;
}

/** Reads the rows of these records again from the truth. */
export function refreshCache(table: string, idColumn: string, which: string): string {
  return `UPDATE ${table} SET (serial_key, words) = (SELECT serial_key, words FROM ${rowsView(table)} r WHERE r.${idColumn} = ${table}.${idColumn}) WHERE ${which}`;
}
