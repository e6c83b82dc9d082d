/** Reads a model sheet from anything: every complaint names the field it is about, and nothing half-read comes out. */
import { err, ok, type Result } from '../result.ts';
import { crossCheckSheet, type SheetProblem } from './crossCheckSheet.ts';
import { type ModelSheet, modelSheet } from './modelSheet.ts';

export type { SheetProblem } from './crossCheckSheet.ts';

export function parseModelSheet(value: unknown): Result<ModelSheet, readonly SheetProblem[]> {
  const parsed = modelSheet.safeParse(value);
  if (!parsed.success) {
    return err(
      parsed.error.issues.map((issue) => ({
        path: issue.path.map(String).join('.') || '(whole file)',
        message: issue.message,
      })),
    );
  }
  const problems = crossCheckSheet(parsed.data);
  return problems.length > 0 ? err(problems) : ok(parsed.data);
}
