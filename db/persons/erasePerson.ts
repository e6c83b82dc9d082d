/**
 * Erases a person: names, addresses, numbers, free words and files go, from the tables, the change log, the search and the
 * pages of the file itself. Days, readings and sealed hashes stay: a seal holds a person only as a salted commitment.
 */
import type { Database } from 'better-sqlite3';
import { dropSearchCaches, ensureSearchCaches } from '../finds/searchCaches.ts';
import { rawStatement } from '../rawStatement.ts';
import {
  attachments,
  consents,
  customers,
  jobs,
  messages,
  parties,
  readinessAnswers,
  sealDisclosures,
  signOffs,
  sites,
  visits,
} from '../schema/index.ts';
import type { StoreWriter } from '../storeWriter.ts';
import { type ErasedFields, eraseLoggedFields, eraseLoggedWords } from './eraseLog.ts';
import { NOTE_ANSWERS_SQL } from './freeWords.ts';
import { listPersonFiles, unneededFiles } from './personFiles.ts';
import { type PersonScope, readPersonScope } from './personScope.ts';
import { personReplacer, readPersonWords } from './personWords.ts';
import { sweepTables } from './sweepTables.ts';

/** Stands where a person was. */
export const ERASED_NAME = '(erased)';

export type Erased = {
  /** Rows of other things that held the person's words. */
  readonly sweptRows: number;
  /** Files, by hash, that nothing needs any more. */
  readonly fileHashes: readonly string[];
};

/** Inside one transaction. What is erased can't be taken back; that it was, when and by whom is in the log. */
export function erasePerson(raw: Database, writer: StoreWriter, partyId: string): Erased {
  const scope = readPersonScope(raw, partyId);
  const replace = personReplacer(readPersonWords(raw, scope), ERASED_NAME);
  raw.function('holds_person', { deterministic: true }, (text) =>
    typeof text === 'string' && replace(text) !== text ? 1 : 0,
  );
  raw.function('without_person', { deterministic: true }, (text) => (typeof text === 'string' ? replace(text) : text));
  const files = listPersonFiles(raw, scope);
  const noteAnswerIds = rawStatement(raw, NOTE_ANSWERS_SQL).pluck().all() as string[];
  const erased = [
    ...erasePlaces(raw, writer, scope),
    ...eraseWords(raw, writer, scope),
    ...eraseSeals(raw, writer, scope),
  ];
  const hashes = files.map((id) => {
    writer.update(attachments, id, { fileName: ERASED_NAME, erasedAt: writer.now });
    erased.push({ entity: 'attachments', id, fields: ['fileName'] });
    return rawStatement(raw, 'SELECT sha256 FROM attachments WHERE id = ?').pluck().get(id) as string;
  });
  eraseLoggedFields(raw, erased);
  eraseLoggedWords(raw, replace, noteAnswerIds);
  return { sweptRows: sweepTables(raw, noteAnswerIds), fileHashes: unneededFiles(raw, hashes) };
}

/** The file itself afterwards, outside a transaction: no page, index or log of it holds the old text. */
export function scrubStore(raw: Database): void {
  raw.pragma('secure_delete = ON');
  dropSearchCaches(raw);
  raw.exec('VACUUM');
  ensureSearchCaches(raw);
  raw.pragma('wal_checkpoint(TRUNCATE)');
  raw.pragma('secure_delete = OFF');
}

function erasePlaces(raw: Database, writer: StoreWriter, scope: PersonScope): ErasedFields[] {
  const none = { email: null, phoneTyped: null, phoneE164: null, street: null, postcode: null, city: null, note: null };
  const party = { name: ERASED_NAME, contactName: null, ...none, region: null, searchText: '' };
  writer.update(parties, scope.partyId, { ...party, erasedAt: writer.now });
  const erased: ErasedFields[] = [{ entity: 'parties', id: scope.partyId, fields: Object.keys(party) }];
  if (scope.customerId !== null) {
    writer.update(customers, scope.customerId, { note: null });
    erased.push({ entity: 'customers', id: scope.customerId, fields: ['note'] });
  }
  for (const id of scope.soleSiteIds) {
    const city = rawStatement(raw, 'SELECT city FROM sites WHERE id = ?').pluck().get(id) as string;
    const place = { label: null, street: ERASED_NAME, postcode: null, access: null, latitude: null, longitude: null };
    writer.update(sites, id, { ...place, searchText: city.toLowerCase() });
    erased.push({ entity: 'sites', id, fields: [...Object.keys(place), 'searchText'] });
  }
  return erased;
}

/** Free words of their visits and jobs, and what was written to them. */
function eraseWords(raw: Database, writer: StoreWriter, scope: PersonScope): ErasedFields[] {
  const erased: ErasedFields[] = [];
  const idsOf = (sql: string, value: string): readonly string[] =>
    rawStatement(raw, sql).pluck().all(value) as string[];
  const note = (entity: string, id: string, fields: object) => erased.push({ entity, id, fields: Object.keys(fields) });
  for (const id of scope.visitIds) {
    const words = { note: null, outcomeReason: null };
    writer.update(visits, id, words);
    note('visits', id, words);
  }
  for (const id of scope.jobIds) {
    const words = { note: null, chargeReason: null };
    writer.update(jobs, id, words);
    note('jobs', id, words);
    for (const answerId of idsOf('SELECT id FROM readiness_answers WHERE job_id = ?', id)) {
      const said = { note: null, confirmedBy: null };
      writer.update(readinessAnswers, answerId, said);
      note('readiness_answers', answerId, said);
    }
  }
  for (const id of idsOf('SELECT id FROM messages WHERE party_id = ?', scope.partyId)) {
    const words = { subject: ERASED_NAME, body: ERASED_NAME };
    writer.update(messages, id, words);
    note('messages', id, words);
  }
  for (const id of idsOf('SELECT id FROM consents WHERE party_id = ?', scope.partyId)) {
    writer.update(consents, id, { source: ERASED_NAME });
    note('consents', id, { source: ERASED_NAME });
  }
  return erased;
}

/** Who signed as occupant, and the values behind the commitments of sealed records: without value and salt nobody can guess them. */
function eraseSeals(raw: Database, writer: StoreWriter, scope: PersonScope): ErasedFields[] {
  const erased: ErasedFields[] = [];
  const runs = JSON.stringify(scope.runIds);
  const signed = rawStatement(
    raw,
    "SELECT id FROM sign_offs WHERE party_id = ? OR (by = 'occupant' AND run_id IN (SELECT value FROM json_each(?)))",
  )
    .pluck()
    .all(scope.partyId, runs) as string[];
  for (const id of signed) {
    writer.update(signOffs, id, { name: ERASED_NAME });
    erased.push({ entity: 'sign_offs', id, fields: ['name'] });
  }
  const disclosed = rawStatement(
    raw,
    'SELECT id FROM seal_disclosures WHERE value IS NOT NULL AND (party_id = ? OR (party_id IS NULL AND holds_person(value)))',
  )
    .pluck()
    .all(scope.partyId) as string[];
  for (const id of disclosed) {
    writer.update(sealDisclosures, id, { value: null, salt: null });
    erased.push({ entity: 'seal_disclosures', id, fields: ['value', 'salt'] });
  }
  return erased;
}
