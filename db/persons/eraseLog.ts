/** Takes a person out of the change log: what was changed, when and by whom stays, what it said is gone. */
import { createHash } from 'node:crypto';
import type { Database } from 'better-sqlite3';
import { rawStatement } from '../rawStatement.ts';
import { FREE_WORDS } from './freeWords.ts';

export type ErasedFields = { readonly entity: string; readonly id: string; readonly fields: readonly string[] };

type OpRow = {
  readonly op_id: string;
  readonly device_id: string;
  readonly incarnation: string;
  readonly device_seq: number;
  readonly actor_id: string | null;
  readonly schema: number;
  readonly kind: string;
  readonly entity: string;
  readonly entity_id: string;
  readonly fields: string;
  readonly hlc: string;
};

/** Each value these fields ever had. */
export function eraseLoggedFields(raw: Database, erased: readonly ErasedFields[]): void {
  const read = rawStatement(raw, 'SELECT * FROM op WHERE entity = ? AND entity_id = ?');
  for (const { entity, id, fields } of erased) {
    for (const row of read.all(entity, id) as OpRow[]) {
      const logged = JSON.parse(row.fields) as Record<string, { base: string | null; value: unknown }>;
      let isChanged = false;
      for (const field of fields) {
        const entry = logged[field];
        if (entry === undefined || entry.value === null) continue;
        entry.value = null;
        isChanged = true;
      }
      if (isChanged) rewrite(raw, row, logged);
    }
  }
}

/** The person's words in what was ever written about other things. `noteAnswerIds`: answers in words, not by choice. */
export function eraseLoggedWords(
  raw: Database,
  replace: (text: string) => string,
  noteAnswerIds: readonly string[],
): void {
  const noteAnswers = new Set(noteAnswerIds);
  const read = rawStatement(raw, 'SELECT * FROM op WHERE entity = ? AND holds_person(fields)');
  for (const { table, columns } of FREE_WORDS) {
    for (const row of read.all(table) as OpRow[]) {
      const logged = JSON.parse(row.fields) as Record<string, { base: string | null; value: unknown }>;
      const free = columns.map(({ field }) => field);
      if (noteAnswers.has(row.entity_id)) free.push('value');
      let isChanged = false;
      for (const field of free) {
        const entry = logged[field];
        if (typeof entry?.value !== 'string') continue;
        const without = replace(entry.value);
        isChanged ||= without !== entry.value;
        entry.value = without;
      }
      if (isChanged) rewrite(raw, row, logged);
    }
  }
}

/** The hash of what was there could be tried through for a name: it is made anew too. */
function rewrite(raw: Database, row: OpRow, fields: object): void {
  const op = {
    opId: row.op_id,
    deviceId: row.device_id,
    incarnation: row.incarnation,
    deviceSeq: row.device_seq,
    actorId: row.actor_id,
    schema: row.schema,
    kind: row.kind,
    entity: row.entity,
    entityId: row.entity_id,
    fields,
    hlc: row.hlc,
  };
  rawStatement(raw, 'UPDATE op SET fields = ?, hash = ? WHERE op_id = ?').run(
    JSON.stringify(fields),
    createHash('sha256').update(JSON.stringify(op)).digest('hex'),
    row.op_id,
  );
}
