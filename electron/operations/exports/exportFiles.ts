/**
 * Everything the firm has on file, in forms that need no program of ours: each table as CSV, all of them as one JSON, and
 * one list of customers with sites, appliances and dates that reads like the lists firms keep. Photos stay where they are.
 */
import { Zip } from 'fflate';
import type { ExportColumn, ExportRow, ExportSnapshot, ExportTable } from '../../../db/exports.ts';
import { csvFile, csvLine, csvNumber, csvText } from '../../documents/csvCell.ts';
import { toDecimalText } from '../../sealing/decimalText.ts';
import { DeflatedFile } from './deflatedFile.ts';

export type ExportFiles = {
  readonly zip: Uint8Array;
  readonly files: readonly { readonly name: string; readonly rowCount: number }[];
};

/** How far it is: the table being written and what is behind. */
export type ExportStep = {
  readonly writing: string;
  readonly tablesDone: number;
  readonly tableCount: number;
  readonly rowsDone: number;
  readonly rowCount: number;
};

/** Characters gathered before they are compressed. */
const PIECE_LENGTH = 256 * 1024;
const PLAIN_LIST = 'customers-and-appliances';

/** Stops after each piece, so that the caller can say how far it is, let others in, or leave it at that. */
export async function* writeExport(
  snapshot: ExportSnapshot,
  madeAt: string,
): AsyncGenerator<ExportStep, ExportFiles, undefined> {
  const lists: readonly (ExportTable & { readonly isInJson: boolean })[] = [
    { ...snapshot.plain, name: PLAIN_LIST, isInJson: false },
    ...snapshot.tables.map((table) => ({ ...table, isInJson: true })),
  ];
  const rowCount = lists.reduce((sum, list) => sum + list.rowCount, 0);
  const json = new DeflatedFile('everything.json');
  await json.write(`{"schema":"lightoff.export/1","madeAt":${JSON.stringify(madeAt)},"tables":{`);
  const written: DeflatedFile[] = [];
  let rowsDone = 0;
  for (const [tablesDone, { name, columns, rows, isInJson }] of lists.entries()) {
    const csv = new DeflatedFile(isInJson ? `tables/${name}.csv` : `${name}.csv`);
    let csvPiece = csvFile([columns.map((column) => csvText(column.name))]);
    let jsonPiece = isInJson ? `${tablesDone > 1 ? ',' : ''}\n${JSON.stringify(name)}:[` : '';
    const pass = async () => {
      await csv.write(csvPiece);
      if (jsonPiece !== '') await json.write(jsonPiece);
      [csvPiece, jsonPiece] = ['', ''];
    };
    let isFirst = true;
    for (const row of rows()) {
      csvPiece += csvLine(columns.map((column, index) => csvCell(column, row[index] ?? null)));
      if (isInJson) jsonPiece += `${isFirst ? '' : ','}\n${jsonRow(columns, row)}`;
      isFirst = false;
      rowsDone += 1;
      if (csvPiece.length < PIECE_LENGTH) continue;
      await pass();
      yield { writing: name, tablesDone, tableCount: lists.length, rowsDone, rowCount };
    }
    if (isInJson) jsonPiece += ']';
    await pass();
    await csv.end();
    written.push(csv);
    yield { writing: name, tablesDone: tablesDone + 1, tableCount: lists.length, rowsDone, rowCount };
  }
  await json.write('\n}}\n');
  await json.end();
  const readMe = new DeflatedFile('read-me.txt');
  await readMe.write(READ_ME);
  await readMe.end();
  return {
    zip: zipOf([...written, json, readMe], new Date(madeAt)),
    files: lists.map((list, index) => ({ name: written[index]?.name ?? list.name, rowCount: list.rowCount })),
  };
}

/** Only text can be taken for a formula; a negative number stays a number. */
function csvCell({ kind }: ExportColumn, value: ExportRow[number]): string {
  if (value === null) return '';
  if (kind === 'flag') return value === 1 ? 'true' : 'false';
  return typeof value === 'number' ? csvNumber(toDecimalText(value)) : csvText(value);
}

function jsonRow(columns: readonly ExportColumn[], row: ExportRow): string {
  return `{${columns.map((column, index) => `${JSON.stringify(column.name)}:${jsonValue(column, row[index] ?? null)}`).join(',')}}`;
}

function jsonValue({ kind }: ExportColumn, value: ExportRow[number]): string {
  if (value !== null && kind === 'flag') return value === 1 ? 'true' : 'false';
  if (value !== null && kind === 'json') return String(value);
  return JSON.stringify(value);
}

function zipOf(files: readonly DeflatedFile[], mtime: Date): Uint8Array {
  const pieces: Uint8Array[] = [];
  const zip = new Zip((error, bytes) => {
    if (error !== null) throw error;
    pieces.push(bytes);
  });
  for (const file of files) file.addTo(zip, mtime);
  zip.end();
  return Buffer.concat(pieces);
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
