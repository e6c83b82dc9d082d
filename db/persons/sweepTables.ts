/** The person's words out of what somebody wrote about other people and work. */
import type { Database } from 'better-sqlite3';
import { rawStatement } from '../rawStatement.ts';
import { FREE_WORDS } from './freeWords.ts';

/** `noteAnswerIds`: answers in words that hold the person. Answers how many rows did. */
export function sweepTables(raw: Database, noteAnswerIds: readonly string[]): number {
  let count = 0;
  for (const { table, columns } of FREE_WORDS) {
    for (const { column } of columns) {
      count += rawStatement(
        raw,
        `UPDATE "${table}" SET "${column}" = without_person("${column}") WHERE "${column}" IS NOT NULL AND holds_person("${column}")`,
      ).run().changes;
    }
  }
  return (
    count +
    rawStatement(
      raw,
      'UPDATE run_answers SET value = without_person(value) WHERE id IN (SELECT value FROM json_each(?))',
    ).run(JSON.stringify(noteAnswerIds)).changes
  );
}
