/** The sheets that come with the app: general practice, so that no job starts without one. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { findRevision } from '../../db/sheets.ts';
import type { StoreWriter } from '../../db/storeWriter.ts';
import { parseModelSheet } from '../../domain/procedure/parseModelSheet.ts';
import { addSheetRevision } from './sheetHandlers.ts';

/** Which of the shipped sheets: general practice for every store, the invented makers' only in the demo. */
export function readShippedSheets(
  appRoot: string,
  which: 'general-practice' | 'all',
): readonly { readonly fileName: string; readonly value: unknown }[] {
  const folder = join(appRoot, 'assets', 'sheets');
  return readdirSync(folder)
    .filter((name) => name.endsWith('.json'))
    .sort()
    .map((fileName) => ({ fileName, value: JSON.parse(readFileSync(join(folder, fileName), 'utf8')) as unknown }))
    .filter((sheet) => which === 'all' || (sheet.value as { maker?: unknown }).maker === null);
}

export function addShippedSheets(
  writer: StoreWriter,
  appRoot: string,
  which: 'general-practice' | 'all' = 'general-practice',
): void {
  for (const { fileName, value } of readShippedSheets(appRoot, which)) {
    const parsed = parseModelSheet(value);
    if (!parsed.ok) throw new Error(`${fileName}: ${JSON.stringify(parsed.error)}`);
    if (findRevision(writer.db, parsed.value.sheetId, parsed.value.revision) === undefined) {
      addSheetRevision(writer, parsed.value, 'shipped with the app');
    }
  }
}
