import { cpSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, expectTypeOf, it } from 'vitest';
import { MigrationRefused, migrate, pendingMigrations, readMigrations } from '../../db/migrate.ts';
import { type OpenOptions, openStore, type ReadableDb, type Store, storePath } from '../../db/openStore.ts';
import { companies, parties } from '../../db/schema/index.ts';
import { nextHlc } from '../../db/storeWriter.ts';
import { APP_ROOT } from '../support/testCore.ts';

const MIGRATIONS = join(APP_ROOT, 'db/migrations');
const NOW = '2026-03-02T13:00:00.000Z';
const BY = { actorId: null, now: NOW };
const PARTY = { kind: 'person', name: 'Åse Łukaszka', searchText: 'ase lukaszka' };

describe('the store', () => {
  let folder: string;
  let store: Store;
  const open = (): Store =>
    openStore({ path: storePath(folder), purpose: 'real', migrationsFolder: MIGRATIONS, now: NOW });
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'lightoff-store-'));
    store = open();
  });
  afterEach(() => {
    if (store.raw.open) store.close();
    rmSync(folder, { recursive: true, force: true });
  });

  it('is durable on every open: WAL with FULL, foreign keys on', () => {
    for (let round = 0; round < 3; round += 1) {
      expect(store.raw.pragma('journal_mode', { simple: true })).toBe('wal');
      expect(store.raw.pragma('synchronous', { simple: true })).toBe(2);
      expect(store.raw.pragma('foreign_keys', { simple: true })).toBe(1);
      expect(store.raw.pragma('trusted_schema', { simple: true })).toBe(0);
      store.close();
      store = open();
    }
  });

  it('has only STRICT tables, and no foreign key that cascades', () => {
    const tables = (store.raw.pragma('table_list') as { name: string; strict: number; type: string }[]).filter(
      (table) => table.type === 'table' && !table.name.startsWith('sqlite_'),
    );
    expect(tables.length).toBeGreaterThan(40);
    expect(tables.filter((table) => table.strict !== 1).map((table) => table.name)).toEqual([]);
    const keys = tables.flatMap(
      (table) => store.raw.pragma(`foreign_key_list(${table.name})`) as { on_delete: string }[],
    );
    expect(keys.length).toBeGreaterThan(30);
    expect(keys.filter((key) => key.on_delete !== 'RESTRICT')).toEqual([]);
  });

  it('writes each change with its operation row, in one transaction', () => {
    const id = store.write(BY, (writer) => writer.insert(parties, PARTY));
    store.write({ ...BY, actorId: 'somebody' }, (writer) =>
      writer.update(parties, id, { name: 'Åse L.', kind: 'person' }),
    );
    const ops = store.raw.prepare('SELECT * FROM op ORDER BY device_seq').all() as {
      kind: string;
      fields: string;
      op_id: string;
      actor_id: string | null;
      device_seq: number;
    }[];
    expect(ops.map((op) => [op.kind, op.device_seq, op.actor_id])).toEqual([
      ['insert', 1, null],
      ['update', 2, 'somebody'],
    ]);
    expect(JSON.parse(ops[0]?.fields ?? '')).toMatchObject({ name: { base: null, value: 'Åse Łukaszka' } });
    expect(JSON.parse(ops[1]?.fields ?? '')).toEqual({ name: { base: ops[0]?.op_id, value: 'Åse L.' } });
  });

  it('leaves neither row nor operation behind when the action fails', () => {
    expect(() =>
      store.write(BY, (writer) => {
        writer.insert(parties, PARTY);
        writer.insert(parties, { ...PARTY, kind: 'ghost' });
      }),
    ).toThrow(/CHECK/);
    expect(store.raw.prepare('SELECT count(*) FROM parties').pluck().get()).toBe(0);
    expect(store.raw.prepare('SELECT count(*) FROM op').pluck().get()).toBe(0);
  });

  it('logs nothing when nothing changes', () => {
    const id = store.write(BY, (writer) => writer.insert(parties, PARTY));
    expect(store.write(BY, (writer) => writer.update(parties, id, { name: PARTY.name }))).toBe(false);
    expect(store.raw.prepare('SELECT count(*) FROM op').pluck().get()).toBe(1);
  });

  it('gives a reader no way to write', () => {
    expectTypeOf<ReadableDb>().not.toHaveProperty('insert');
    expectTypeOf<ReadableDb>().not.toHaveProperty('delete');
    expectTypeOf<ReadableDb>().not.toHaveProperty('run');
  });

  it('keeps what was committed when the process is killed without closing', () => {
    store.write(BY, (writer) => writer.insert(parties, PARTY));
    const other = open();
    expect(other.raw.prepare('SELECT name FROM parties').pluck().get()).toBe(PARTY.name);
    other.close();
  });

  it('does not open a demo store as a real one', () => {
    store.close();
    expect(() =>
      openStore({ path: storePath(folder), purpose: 'demo', migrationsFolder: MIGRATIONS, now: NOW }),
    ).toThrow(/real store/);
  });

  it('does not open a file that is no store, and leaves it as it was', () => {
    const path = join(folder, 'other.db');
    writeFileSync(path, 'these are somebody’s notes, not a database, and long enough to have a header'.repeat(40));
    expect(() => openStore({ path, purpose: 'real', migrationsFolder: MIGRATIONS, now: NOW })).toThrow();
  });

  it('refuses a store written by a newer program, and a migration that was edited after it ran', () => {
    const migrations = readMigrations(MIGRATIONS);
    const first = migrations[0];
    if (first === undefined) throw new Error('no migrations');
    expect(() =>
      pendingMigrations(store.raw, [{ ...first, sql: `${first.sql}\n-- edited` }, ...migrations.slice(1)]),
    ).toThrow(/edited-migration/);
    store.raw.prepare("INSERT INTO _migration (name, sha, at) VALUES ('9999_later.sql', 'x', 'y')").run();
    expect(() => pendingMigrations(store.raw, migrations)).toThrow(MigrationRefused);
  });

  it('makes a backup before it migrates an existing store, and none for a new one', () => {
    store.close();
    const later = join(folder, 'migrations');
    cpSync(MIGRATIONS, later, { recursive: true });
    writeFileSync(join(later, '0900_later.sql'), 'CREATE TABLE later (id TEXT PRIMARY KEY) STRICT;');
    const seen: unknown[] = [];
    const beforeMigration: OpenOptions['beforeMigration'] = (raw) => {
      seen.push(raw.prepare("SELECT count(*) FROM sqlite_schema WHERE name = 'later'").pluck().get());
    };
    store = openStore({ path: storePath(folder), purpose: 'real', migrationsFolder: later, now: NOW, beforeMigration });
    expect(seen).toEqual([0]);
    expect(store.raw.prepare("SELECT count(*) FROM sqlite_schema WHERE name = 'later'").pluck().get()).toBe(1);
    openStore({
      path: join(folder, 'new.db'),
      purpose: 'real',
      migrationsFolder: later,
      now: NOW,
      beforeMigration,
    }).close();
    expect(seen).toEqual([0]);
  });

  it('rolls a failing migration back whole', () => {
    const bad = {
      name: '0999_bad.sql',
      sql: 'CREATE TABLE half (id TEXT PRIMARY KEY) STRICT;--> statement-breakpoint\nINSERT INTO nowhere VALUES (1);',
    };
    expect(() => migrate(store.raw, [bad], NOW)).toThrow();
    expect(store.raw.prepare("SELECT count(*) FROM sqlite_schema WHERE name = 'half'").pluck().get()).toBe(0);
    expect(store.raw.pragma('foreign_keys', { simple: true })).toBe(1);
  });

  it('keeps the children of a table that a migration rebuilds', () => {
    const partyId = store.write(BY, (writer) => writer.insert(parties, PARTY));
    store.raw.exec(
      'CREATE TABLE a_parent (id TEXT PRIMARY KEY) STRICT; CREATE TABLE a_child (id TEXT PRIMARY KEY, parent_id TEXT NOT NULL REFERENCES a_parent(id) ON DELETE CASCADE) STRICT',
    );
    store.raw.exec("INSERT INTO a_parent VALUES ('p'); INSERT INTO a_child VALUES ('c', 'p')");
    const rebuild = {
      name: '0998_rebuild.sql',
      sql: 'CREATE TABLE new_parent (id TEXT PRIMARY KEY CHECK (length(id) > 0)) STRICT;--> statement-breakpoint\nINSERT INTO new_parent SELECT * FROM a_parent;--> statement-breakpoint\nDROP TABLE a_parent;--> statement-breakpoint\nALTER TABLE new_parent RENAME TO a_parent;',
    };
    migrate(store.raw, [rebuild], NOW);
    expect(store.raw.prepare('SELECT count(*) FROM a_child').pluck().get()).toBe(1);
    expect(store.raw.prepare('SELECT id FROM parties').pluck().get()).toBe(partyId);
  });

  it('never lets its hybrid clock run backwards', () => {
    const first = nextHlc('', 2_000);
    const afterSetBack = nextHlc(first, 1_000);
    const later = nextHlc(afterSetBack, 3_000);
    expect([first, afterSetBack, later].toSorted()).toEqual([first, afterSetBack, later]);
  });

  it('refuses text where a number belongs', () => {
    expect(() =>
      store.raw
        .prepare(
          "INSERT INTO licences (id, staff_id, number, issuer, place, licence_class, max_kw, valid_from, valid_to) VALUES ('a','b','c','d','e','f','twenty','2026-01-01','2026-01-02')",
        )
        .run(),
    ).toThrow(/REAL/);
  });

  it('has one company at most through the first run, and a unit system that exists', () => {
    expect(() =>
      store.write(BY, (writer) =>
        writer.insert(companies, {
          name: 'x',
          country: 'CA',
          timeZone: 'UTC',
          unitSystem: 'furlongs',
          language: 'en',
          jurisdiction: 'europe',
        }),
      ),
    ).toThrow(/companies_unit_system/);
  });
});
