/**
 * Everything the firm has on file, in forms that need no program of ours: each table as CSV, all of them as one JSON, and
 * one list of customers with sites, appliances and dates that reads like the lists firms keep. Photos stay where they are.
 */
import { type Zippable, zipSync } from 'fflate';
import { listExportRows, listPlainRows } from '../../../db/exports.ts';
import type { ReadableDb } from '../../../db/openStore.ts';
import { csvFile, csvNumber, csvText } from '../../documents/csvCell.ts';
import { toDecimalText } from '../../sealing/decimalText.ts';

export type ExportFiles = {
  readonly zip: Uint8Array;
  readonly files: readonly { readonly name: string; readonly rowCount: number }[];
};

export function exportFiles(db: ReadableDb, madeAt: string): ExportFiles {
  const tables = listExportRows(db);
  const plain = listPlainRows(db);
  const csvs = [
    { name: 'customers-and-appliances.csv', columns: plain.columns, rows: plain.rows },
    ...tables.map(({ name, columns, rows }) => ({ name: `tables/${name}.csv`, columns, rows })),
  ];
  const json = {
    schema: 'lightoff.export/1',
    madeAt,
    tables: Object.fromEntries(tables.map(({ name, rows }) => [name, rows])),
  };
  const zippable: Zippable = {};
  for (const { name, columns, rows } of csvs) {
    const lines = rows.map((row) => columns.map((column) => cell(row[column])));
    zippable[name] = utf8(csvFile([columns.map(csvText), ...lines]));
  }
  zippable['everything.json'] = utf8(JSON.stringify(json, null, 1));
  zippable['read-me.txt'] = utf8(READ_ME);
  return {
    zip: zipSync(zippable, { level: 6, mtime: new Date(madeAt) }),
    files: csvs.map(({ name, rows }) => ({ name, rowCount: rows.length })),
  };
}

/** Only text can be taken for a formula; a negative number stays a number. */
function cell(value: unknown): string {
  if (value === null || value === undefined) return '';
  if (typeof value === 'number') return csvNumber(toDecimalText(value));
  if (typeof value === 'boolean') return value ? 'true' : 'false';
  return csvText(typeof value === 'string' ? value : JSON.stringify(value));
}

function utf8(text: string): Uint8Array {
  return new TextEncoder().encode(text);
}

const READ_ME = `What is in here

customers-and-appliances.csv  one line per appliance with its customer, site and dates; can be imported again
tables/*.csv                  every table of the store; the ids tie them together
everything.json               the same tables, with their types

CSV files are UTF-8 with a byte order mark, commas and CRLF line ends (RFC 4180). Days are year-month-day, instants are UTC.
A text that a spreadsheet would run as a formula has an apostrophe in front. Amounts are in the unit at the end of the
column's name (kw, m, l ...); money is in the smallest unit of its currency.

Not in here: photos and documents (folder "attachments", named by the SHA-256 in tables/attachments.csv), PINs, and the
change log (in the store itself and in every backup).
`;
