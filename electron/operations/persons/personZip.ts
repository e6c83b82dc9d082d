/** One person's data as a ZIP: one JSON, and each table as CSV for whoever has a spreadsheet only. */
import { strToU8, zipSync } from 'fflate';
import type { PersonTable } from '../../../db/persons/personRows.ts';
import { csvFile, csvNumber, csvText } from '../../documents/csvCell.ts';
import { toDecimalText } from '../../sealing/decimalText.ts';

export function personZip(tables: readonly PersonTable[], madeAt: string): Uint8Array {
  const filled = tables.filter(({ rows }) => rows.length > 0);
  const json = {
    schema: 'lightoff.person/1',
    madeAt,
    tables: Object.fromEntries(filled.map(({ name, rows }) => [name, rows])),
  };
  const files = Object.fromEntries(
    filled.map(({ name, rows }) => {
      const columns = Object.keys(rows[0] ?? {});
      const lines = rows.map((row) => columns.map((column) => cell(row[column])));
      return [`tables/${name}.csv`, strToU8(csvFile([columns.map(csvText), ...lines]))];
    }),
  );
  return zipSync(
    { 'person.json': strToU8(`${JSON.stringify(json, null, 2)}\n`), 'read-me.txt': strToU8(READ_ME), ...files },
    { mtime: new Date(madeAt) },
  );
}

function cell(value: unknown): string {
  if (value === null || value === undefined) return '';
  return typeof value === 'number' ? csvNumber(toDecimalText(value)) : csvText(String(value));
}

const READ_ME = `What is in here

person.json   everything on file about the person, by table
tables/*.csv  the same tables, for a spreadsheet

Days are year-month-day, instants are UTC. Amounts are in the unit at the end of the column's name. Photos and documents are
not in here: they can be saved from the visit or the appliance they belong to.
`;
