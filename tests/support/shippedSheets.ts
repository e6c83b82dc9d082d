/** The model sheets that come with the program, parsed. */
import { readdirSync, readFileSync } from 'node:fs';
import type { ModelSheet } from '../../domain/procedure/modelSheet.ts';
import { parseModelSheet } from '../../domain/procedure/parseModelSheet.ts';

const folder = new URL('../../assets/sheets/', import.meta.url);

export const SHEET_FILES: readonly string[] = readdirSync(folder).filter((name) => name.endsWith('.json'));

export function readShippedSheet(fileName: string): ModelSheet {
  const parsed = parseModelSheet(JSON.parse(readFileSync(new URL(fileName, folder), 'utf8')));
  if (!parsed.ok) throw new Error(`${fileName}: ${JSON.stringify(parsed.error)}`);
  return parsed.value;
}

export function readShippedSheets(): readonly ModelSheet[] {
  return SHEET_FILES.map(readShippedSheet);
}
