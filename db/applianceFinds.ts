/**
 * The cache behind "search as you type": for each appliance its serial with look-alikes folded, and the folded words of the
 * appliance, its site and the people there now, with a full-text table over every run of three letters. Kept by triggers;
 * it is no truth: taken away before a migration, which may rebuild the tables it listens to, and filled again afterwards.
 */
import type { Database } from 'better-sqlite3';
import { type SQL, sql } from 'drizzle-orm';
import { searchTerms } from '../domain/text/foldForSearch.ts';
import { serialKeyOf } from '../domain/text/serialKey.ts';

/** Under three letters the full-text table knows nothing. */
const SHORTEST_INDEXED = 3;

/** Which rows `f` of `appliance_finds` have every word of the query, or all of it as a serial; null: nothing was asked. */
export function foundAppliances(query: string): SQL | null {
  const terms = searchTerms(query);
  if (terms.length === 0) return null;
  const wholeKey = serialKeyOf(query);
  const indexed = terms.filter((term) => term.length >= SHORTEST_INDEXED).map(matchOfTerm);
  const short = terms.filter((term) => term.length < SHORTEST_INDEXED);
  const asWords = indexed.join(' AND ');
  const asSerial = wholeKey.length >= SHORTEST_INDEXED ? `serial_key : ${quoted(wholeKey)}` : '';
  const shortly = short.map(
    (term) =>
      sql`(f.words LIKE ${`${term}%`} OR f.words LIKE ${`% ${term}%`} OR f.serial_key LIKE ${`${serialKeyOf(term)}%`})`,
  );
  if (asWords === '' && asSerial === '') return sql.join(shortly, sql` AND `);
  const inText = (match: string) =>
    sql`f.number IN (SELECT rowid FROM appliance_finds_text WHERE appliance_finds_text MATCH ${match})`;
  if (shortly.length === 0) {
    return inText(asSerial === '' ? asWords : `(${asWords}) OR (${asSerial})`);
  }
  const words = sql.join(asWords === '' ? shortly : [inText(asWords), ...shortly], sql` AND `);
  return asSerial === '' ? words : sql`((${words}) OR ${inText(asSerial)})`;
}

function matchOfTerm(term: string): string {
  const key = serialKeyOf(term);
  const inWords = `words : ${quoted(term)}`;
  return key.length >= SHORTEST_INDEXED ? `(${inWords} OR serial_key : ${quoted(key)})` : `(${inWords})`;
}

function quoted(text: string): string {
  return `"${text.replaceAll('"', '""')}"`;
}

/** Makes what is missing of it, and fills it when anything was. */
export function ensureApplianceFinds(raw: Database): void {
  const present = new Set(raw.prepare('SELECT name FROM sqlite_schema').pluck().all());
  if (PARTS.every(([, name]) => present.has(name))) return;
  raw.transaction(() => {
    dropApplianceFinds(raw);
    for (const [, , definition] of PARTS) raw.exec(definition);
    raw.exec(
      'INSERT INTO appliance_finds (appliance_id, serial_key, words) SELECT appliance_id, serial_key, words FROM appliance_find_rows ORDER BY appliance_id',
    );
  })();
}

export function dropApplianceFinds(raw: Database): void {
  for (const [kind, name] of PARTS.toReversed()) raw.exec(`DROP ${kind} IF EXISTS ${name}`);
}

const FRESH_WORDS = '(SELECT words FROM appliance_find_rows r WHERE r.appliance_id = appliance_finds.appliance_id)';
const HERE = 'to_on IS NULL';

const PARTS: readonly (readonly [kind: 'TABLE' | 'VIEW' | 'TRIGGER', name: string, definition: string])[] = [
  [
    'TABLE',
    'appliance_finds',
    `CREATE TABLE appliance_finds (number INTEGER PRIMARY KEY, appliance_id TEXT NOT NULL UNIQUE, serial_key TEXT NOT NULL, words TEXT NOT NULL) STRICT`,
  ],
  [
    'TABLE',
    'appliance_finds_text',
    `CREATE VIRTUAL TABLE appliance_finds_text USING fts5(serial_key, words, content='appliance_finds', content_rowid='number', tokenize='trigram remove_diacritics 1')`,
  ],
  [
    'VIEW',
    'appliance_find_rows',
    `CREATE VIEW appliance_find_rows AS
      SELECT a.id AS appliance_id, a.serial_key AS serial_key,
        lower(a.maker || ' ' || a.model) || ' ' || coalesce(s.search_text, '') || ' ' || coalesce(p.search_text, '') || ' ' ||
        coalesce((SELECT group_concat(rp.search_text, ' ') FROM party_roles r JOIN parties rp ON rp.id = r.party_id
          WHERE r.${HERE} AND r.site_id = s.id), '') || ' ' ||
        coalesce((SELECT group_concat(rp.search_text, ' ') FROM party_roles r JOIN parties rp ON rp.id = r.party_id
          WHERE r.${HERE} AND r.appliance_id = a.id), '') AS words
      FROM appliances a
      LEFT JOIN placements pl ON pl.id = (SELECT min(id) FROM placements WHERE appliance_id = a.id AND ${HERE})
      LEFT JOIN sites s ON s.id = pl.site_id
      LEFT JOIN customers c ON c.id = s.customer_id
      LEFT JOIN parties p ON p.id = c.party_id`,
  ],
  trigger(
    'appliance_finds_added',
    'AFTER INSERT ON appliance_finds',
    'INSERT INTO appliance_finds_text (rowid, serial_key, words) VALUES (new.number, new.serial_key, new.words)',
  ),
  trigger(
    'appliance_finds_removed',
    'AFTER DELETE ON appliance_finds',
    "INSERT INTO appliance_finds_text (appliance_finds_text, rowid, serial_key, words) VALUES ('delete', old.number, old.serial_key, old.words)",
  ),
  trigger(
    'appliance_finds_changed',
    'AFTER UPDATE ON appliance_finds',
    `INSERT INTO appliance_finds_text (appliance_finds_text, rowid, serial_key, words) VALUES ('delete', old.number, old.serial_key, old.words);
     INSERT INTO appliance_finds_text (rowid, serial_key, words) VALUES (new.number, new.serial_key, new.words)`,
  ),
  trigger(
    'find_appliance_added',
    'AFTER INSERT ON appliances',
    'INSERT INTO appliance_finds (appliance_id, serial_key, words) SELECT appliance_id, serial_key, words FROM appliance_find_rows WHERE appliance_id = new.id',
  ),
  trigger(
    'find_appliance_changed',
    'AFTER UPDATE OF serial_key, maker, model ON appliances',
    `UPDATE appliance_finds SET serial_key = new.serial_key, words = ${FRESH_WORDS} WHERE appliance_id = new.id`,
  ),
  trigger(
    'find_appliance_removed',
    'AFTER DELETE ON appliances',
    'DELETE FROM appliance_finds WHERE appliance_id = old.id',
  ),
  ...(['INSERT', 'UPDATE', 'DELETE'] as const).map((event) =>
    trigger(
      `find_placement_${event.toLowerCase()}`,
      `AFTER ${event} ON placements`,
      refresh(`appliance_id = ${event === 'DELETE' ? 'old' : 'new'}.appliance_id`),
    ),
  ),
  trigger(
    'find_site_changed',
    'AFTER UPDATE OF search_text, customer_id ON sites',
    refresh(`appliance_id IN (SELECT appliance_id FROM placements WHERE site_id = new.id AND ${HERE})`),
  ),
  trigger(
    'find_party_changed',
    'AFTER UPDATE OF search_text ON parties',
    refresh(`appliance_id IN (
      SELECT pl.appliance_id FROM customers c JOIN sites s ON s.customer_id = c.id JOIN placements pl ON pl.site_id = s.id
        WHERE c.party_id = new.id AND pl.${HERE}
      UNION SELECT pl.appliance_id FROM party_roles r JOIN placements pl ON pl.site_id = r.site_id
        WHERE r.party_id = new.id AND r.${HERE} AND pl.${HERE}
      UNION SELECT appliance_id FROM party_roles WHERE party_id = new.id AND ${HERE})`),
  ),
  ...(['INSERT', 'UPDATE', 'DELETE'] as const).map((event) => {
    const row = event === 'DELETE' ? 'old' : 'new';
    return trigger(
      `find_role_${event.toLowerCase()}`,
      `AFTER ${event} ON party_roles`,
      refresh(
        `appliance_id = ${row}.appliance_id OR appliance_id IN (SELECT appliance_id FROM placements WHERE site_id = ${row}.site_id AND ${HERE})`,
      ),
    );
  }),
];

function refresh(which: string): string {
  return `UPDATE appliance_finds SET words = ${FRESH_WORDS} WHERE ${which}`;
}

function trigger(name: string, when: string, body: string): readonly ['TRIGGER', string, string] {
  return ['TRIGGER', name, `CREATE TRIGGER ${name} ${when} BEGIN ${body}; END`];
}
