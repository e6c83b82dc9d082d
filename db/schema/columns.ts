/** Column builders with our habits: ids made on the device, days and instants as checked text, no silent defaults. */
import { type SQL, sql } from 'drizzle-orm';
import { type AnySQLiteColumn, check, integer, text } from 'drizzle-orm/sqlite-core';

export const primaryId = () => text('id').primaryKey();
export const instant = (name: string) => text(name);
export const day = (name: string) => text(name);
export const flag = (name: string) => integer(name, { mode: 'boolean' });
export const json = <T>(name: string) => text(name, { mode: 'json' }).$type<T>();

/** A closed set of words. */
export function oneOf(name: string, column: AnySQLiteColumn, values: readonly string[]) {
  return check(name, sql`${column} IN (${sql.raw(values.map((value) => `'${value}'`).join(', '))})`);
}

export function isDay(name: string, column: AnySQLiteColumn) {
  return check(name, sql`${column} IS NULL OR ${column} GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'`);
}

export function isJson(name: string, column: AnySQLiteColumn) {
  return check(name, sql`${column} IS NULL OR json_valid(${column})`);
}

export function rule(name: string, condition: SQL) {
  return check(name, condition);
}
