/** Every table of the schema, as the program knows them: what goes over all of them asks here. */
import { is } from 'drizzle-orm';
import { SQLiteTable } from 'drizzle-orm/sqlite-core';
import * as schema from './schema/index.ts';

const EXPORTED: readonly unknown[] = Object.values(schema);

export const SCHEMA_TABLES: readonly SQLiteTable[] = EXPORTED.filter((one): one is SQLiteTable => is(one, SQLiteTable));
