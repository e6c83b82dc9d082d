/**
 * The only way into the tables: each insert and update adds its operation row in the same transaction, with each field's
 * value and the operation that set it before, ready for history, undo and exchange between machines.
 */
import { hash } from 'node:crypto';
import type { Database } from 'better-sqlite3';
import { getTableColumns, getTableName, type InferInsertModel } from 'drizzle-orm';
import type { AnySQLiteColumn, SQLiteTable } from 'drizzle-orm/sqlite-core';
import { newId } from './newId.ts';
import type { ReadableDb, WriteContext } from './openStore.ts';
import { rawStatement } from './rawStatement.ts';
import { insertRow, readRow, updateRow } from './rowAccess.ts';
import { type LoggedField, ops } from './schema/log.ts';

/** Grows when the meaning of operation rows changes. */
const OPERATION_SCHEMA = 1;

type TableWithId = SQLiteTable & { readonly id: AnySQLiteColumn };
type DeviceRow = {
  readonly device_id: string;
  readonly incarnation: string;
  readonly next_seq: number;
  readonly last_hlc: string;
};

export class StoreWriter {
  readonly db: ReadableDb;
  readonly now: string;
  readonly actorId: string | null;
  readonly #raw: Database;
  readonly #device: DeviceRow;
  #nextSeq: number;
  #lastHlc: string;

  constructor(raw: Database, db: ReadableDb, by: WriteContext) {
    this.db = db;
    this.now = by.now;
    this.actorId = by.actorId;
    this.#raw = raw;
    this.#device = rawStatement(
      raw,
      'SELECT device_id, incarnation, next_seq, last_hlc FROM device',
    ).get() as DeviceRow;
    this.#nextSeq = this.#device.next_seq;
    this.#lastHlc = this.#device.last_hlc;
  }

  /** Where in this device's log the next written row will stand. */
  get nextSequence(): number {
    return this.#nextSeq;
  }

  newId(): string {
    return newId(Date.parse(this.now));
  }

  /** The row gets its id here unless it brings one; a row that is there already is an error, never an overwrite. */
  insert<T extends TableWithId>(table: T, row: Omit<InferInsertModel<T>, 'id'> & { readonly id?: string }): string {
    const rowId = row.id ?? this.newId();
    const full = { ...row, id: rowId } as InferInsertModel<T>;
    insertRow(this.#raw, table, full);
    const fields: Record<string, LoggedField> = {};
    const columns = getTableColumns(table);
    for (const [name, value] of Object.entries(row)) {
      if (name !== 'id' && name in columns && value !== undefined && value !== null)
        fields[name] = { base: null, value };
    }
    this.#log('insert', getTableName(table), rowId, fields);
    return rowId;
  }

  /** Writes and logs only the fields that really change; answers whether any did. */
  update<T extends TableWithId>(table: T, rowId: string, patch: Partial<Omit<InferInsertModel<T>, 'id'>>): boolean {
    const current = readRow(this.#raw, table, rowId);
    if (current === undefined) throw new Error(`no ${getTableName(table)} row ${rowId}`);
    const changed = Object.entries(patch).filter(
      ([name, value]) =>
        name in current && value !== undefined && JSON.stringify(value) !== JSON.stringify(current[name]),
    );
    if (changed.length === 0) return false;
    updateRow(this.#raw, table, rowId, Object.fromEntries(changed));
    const entity = getTableName(table);
    const bases = this.#lastSetBy(entity, rowId, new Set(changed.map(([name]) => name)));
    this.#log(
      'update',
      entity,
      rowId,
      Object.fromEntries(changed.map(([name, value]) => [name, { base: bases.get(name) ?? null, value }])),
    );
    return true;
  }

  /** For rows that only tie two others together; everything else is kept and marked. */
  remove<T extends TableWithId>(table: T, rowId: string): void {
    rawStatement(this.#raw, `DELETE FROM "${getTableName(table)}" WHERE id = ?`).run(rowId);
    this.#log('delete', getTableName(table), rowId, {});
  }

  /** Called once, before the transaction commits. */
  finish(): void {
    if (this.#nextSeq === this.#device.next_seq) return;
    rawStatement(this.#raw, 'UPDATE device SET next_seq = ?, last_hlc = ?').run(this.#nextSeq, this.#lastHlc);
  }

  #lastSetBy(entity: string, entityId: string, names: Set<string>): Map<string, string> {
    const found = new Map<string, string>();
    const rows = rawStatement(
      this.#raw,
      'SELECT op_id, fields FROM op WHERE entity = ? AND entity_id = ? ORDER BY rowid DESC',
    ).iterate(entity, entityId) as IterableIterator<{ op_id: string; fields: string }>;
    for (const row of rows) {
      // Reading all of what was logged takes longer than to see that none of these can be in it.
      if (![...names].some((name) => row.fields.includes(`"${name}":`))) continue;
      for (const name of Object.keys(JSON.parse(row.fields) as object)) {
        if (names.has(name) && !found.has(name)) found.set(name, row.op_id);
      }
      if (found.size === names.size) break;
    }
    return found;
  }

  #log(
    kind: 'insert' | 'update' | 'delete',
    entity: string,
    entityId: string,
    fields: Record<string, LoggedField>,
  ): void {
    this.#lastHlc = nextHlc(this.#lastHlc, Date.parse(this.now));
    const op = {
      opId: this.newId(),
      deviceId: this.#device.device_id,
      incarnation: this.#device.incarnation,
      deviceSeq: this.#nextSeq,
      actorId: this.actorId,
      schema: OPERATION_SCHEMA,
      kind,
      entity,
      entityId,
      fields,
      hlc: this.#lastHlc,
    };
    this.#nextSeq += 1;
    insertRow(this.#raw, ops, { ...op, hash: hash('sha256', JSON.stringify(op)) });
  }
}

/** Hybrid clock, `milliseconds-counter`: never runs backwards even when the machine's clock does. For showing order only. */
export function nextHlc(last: string, nowMs: number): string {
  const [lastMs = '0', lastCounter = '0'] = last.split('-');
  const ms = Math.max(Number(lastMs), nowMs);
  const counter = ms === Number(lastMs) ? Number(lastCounter) + 1 : 0;
  return `${String(ms).padStart(13, '0')}-${String(counter).padStart(6, '0')}`;
}
