/** The change log and this machine's own identity. Every write adds its operation rows in the same transaction. */
import { sql } from 'drizzle-orm';
import { index, integer, sqliteTable, text, uniqueIndex } from 'drizzle-orm/sqlite-core';
import { instant, isJson, json, oneOf, primaryId, rule } from './columns.ts';

/** `base` is the opId that last set the field as this device saw it; null: never set before. */
export type LoggedField = { readonly base: string | null; readonly value: unknown };

export const ops = sqliteTable(
  'op',
  {
    opId: text('op_id').primaryKey(),
    deviceId: text('device_id').notNull(),
    incarnation: text('incarnation').notNull(),
    deviceSeq: integer('device_seq').notNull(),
    /** null: the program itself, before anybody is known. */
    actorId: text('actor_id'),
    schema: integer('schema').notNull(),
    kind: text('kind').notNull(),
    entity: text('entity').notNull(),
    entityId: text('entity_id').notNull(),
    fields: json<Record<string, LoggedField>>('fields').notNull(),
    hlc: text('hlc').notNull(),
    hash: text('hash').notNull(),
  },
  (t) => [
    uniqueIndex('op_device_seq').on(t.deviceId, t.incarnation, t.deviceSeq),
    index('op_by_entity').on(t.entity, t.entityId),
    oneOf('op_kind', t.kind, ['insert', 'update', 'delete']),
    isJson('op_fields', t.fields),
  ],
);

/** One row that never travels: which machine this store lives on. */
export const device = sqliteTable(
  'device',
  {
    id: primaryId(),
    deviceId: text('device_id').notNull(),
    incarnation: text('incarnation').notNull(),
    nextSeq: integer('next_seq').notNull(),
    lastHlc: text('last_hlc').notNull(),
    createdAt: instant('created_at').notNull(),
    /** `real` or `demo`: a demo store can never be taken for a real one. */
    purpose: text('purpose').notNull(),
  },
  (t) => [oneOf('device_purpose', t.purpose, ['real', 'demo']), rule('device_one_row', sql`${t.id} = 'this'`)],
);
