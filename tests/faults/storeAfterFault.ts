/** What must hold of a store after whatever happened to it: whole, and everything in it that was answered before. */
import Database from 'better-sqlite3';
import { expect } from 'vitest';
import { storePath } from '../../db/openStore.ts';

export type AnsweredReading = { readonly readingId: string; readonly typedText: string };

/** Of the lines `saved ID TEXT` that the writer says. */
export function answeredReadings(lines: readonly string[]): readonly AnsweredReading[] {
  return lines
    .filter((line) => line.startsWith('saved '))
    .map((line) => ({ readingId: line.split(' ')[1] ?? '', typedText: line.split(' ')[2] ?? '' }));
}

export function expectWholeStore(folder: string, answered: readonly AnsweredReading[]): void {
  const raw = new Database(storePath(folder));
  try {
    const one = (sql: string) => raw.prepare(sql).pluck().get();
    expect(raw.pragma('integrity_check', { simple: true })).toBe('ok');
    expect(raw.pragma('foreign_key_check')).toEqual([]);
    const find = raw.prepare('SELECT typed_text AS typedText FROM readings WHERE id = ?');
    for (const { readingId, typedText } of answered) expect(find.get(readingId)).toEqual({ typedText });
    // A reading and its operation row are there together or not at all; and one reading stands, never two or none.
    expect(
      one("SELECT count(*) FROM readings WHERE id NOT IN (SELECT entity_id FROM op WHERE entity = 'readings')"),
    ).toBe(0);
    expect(
      one("SELECT count(*) FROM readings WHERE item_key = 'cold-pressure' AND superseded_by_id IS NULL"),
    ).toBeLessThanOrEqual(1);
    expect(one('SELECT current_step_key FROM runs')).toBe('fill');
  } finally {
    raw.close();
  }
}
