/**
 * Everything the firm has on file, in forms that need no program of ours: each table as CSV, all of them as one JSON, and
 * one list of customers with sites, appliances and dates that reads like the lists firms keep. Where they are asked for, photos
 * and documents follow in ZIPs of their own, each as large as one can still handle.
 */
import { Zip } from 'fflate';
import type { ExportColumn, ExportRow, ExportSnapshot, ExportTable } from '../../../db/exports.ts';
import { csvFile, csvLine, csvNumber, csvText } from '../../documents/csvCell.ts';
import { toDecimalText } from '../../sealing/decimalText.ts';
import { addStored, DeflatedFile } from './deflatedFile.ts';

export type ExportFiles = {
  readonly zip: Uint8Array;
  readonly files: readonly { readonly name: string; readonly rowCount: number }[];
  /** Of the photos and documents: those put in, and those whose bytes are gone or spoiled. */
  readonly fileCount: number;
  readonly missingCount: number;
};

export type FilesTaken = {
  /** null: the bytes are gone, or are not what they were. */
  readonly read: (sha256: string) => Uint8Array | null;
  /** One ZIP of files is full. */
  readonly keep: (zip: Uint8Array) => void;
  readonly zipBytes?: number;
};

/** Large enough to be few, small enough for the memory of an old laptop. */
const ZIP_BYTES = 200 * 1024 * 1024;

/** How far it is: the table being written and what is behind. */
export type ExportStep = {
  readonly writing: string;
  readonly tablesDone: number;
  readonly tableCount: number;
  readonly rowsDone: number;
  readonly rowCount: number;
  /** Photos and documents. */
  readonly filesDone: number;
  readonly fileCount: number;
};

/** Characters gathered before they are compressed. */
const PIECE_LENGTH = 256 * 1024;
const PLAIN_LIST = 'customers-and-appliances';
const BELONGINGS = 'files-belong-to';
export const WRITING_FILES = 'photos and documents';

/** Stops after each piece, so that the caller can say how far it is, let others in, or leave it at that. */
export async function* writeExport(
  snapshot: ExportSnapshot,
  madeAt: string,
  taken: FilesTaken,
): AsyncGenerator<ExportStep, ExportFiles, undefined> {
  const lists: readonly (ExportTable & { readonly isInJson: boolean })[] = [
    { ...snapshot.plain, name: PLAIN_LIST, isInJson: false },
    ...(snapshot.files === null ? [] : [{ ...snapshot.files.belongings, name: BELONGINGS, isInJson: false }]),
    ...snapshot.tables.map((table) => ({ ...table, isInJson: true })),
  ];
  const rowCount = lists.reduce((sum, list) => sum + list.rowCount, 0);
  const json = new DeflatedFile('everything.json');
  await json.write(`{"schema":"lightoff.export/1","madeAt":${JSON.stringify(madeAt)},"tables":{`);
  const written: DeflatedFile[] = [];
  const files = snapshot.files?.list ?? [];
  let rowsDone = 0;
  let filesDone = 0;
  const isFirstInJson = lists.findIndex(({ isInJson }) => isInJson);
  const step = (writing: string, tablesDone: number): ExportStep => ({
    writing,
    tablesDone,
    tableCount: lists.length,
    rowsDone,
    rowCount,
    filesDone,
    fileCount: files.length,
  });
  for (const [tablesDone, { name, columns, rows, isInJson }] of lists.entries()) {
    const csv = new DeflatedFile(isInJson ? `tables/${name}.csv` : `${name}.csv`);
    let csvPiece = csvFile([columns.map((column) => csvText(column.name))]);
    let jsonPiece = isInJson ? `${tablesDone > isFirstInJson ? ',' : ''}\n${JSON.stringify(name)}:[` : '';
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
      yield step(name, tablesDone);
    }
    if (isInJson) jsonPiece += ']';
    await pass();
    await csv.end();
    written.push(csv);
    yield step(name, tablesDone + 1);
  }
  await json.write('\n}}\n');
  await json.end();
  const readMe = new DeflatedFile('read-me.txt');
  await readMe.write(READ_ME);
  await readMe.end();
  let missingCount = 0;
  let zip = new FilesZip(new Date(madeAt));
  for (const { sha256, mediaType } of files) {
    const bytes = taken.read(sha256);
    if (bytes === null) missingCount += 1;
    else {
      if (zip.byteLength > 0 && zip.byteLength + bytes.length > (taken.zipBytes ?? ZIP_BYTES)) {
        taken.keep(zip.end());
        zip = new FilesZip(new Date(madeAt));
      }
      zip.add(`files/${sha256}${EXTENSIONS[mediaType] ?? ''}`, bytes);
    }
    filesDone += 1;
    yield step(WRITING_FILES, lists.length);
  }
  if (zip.byteLength > 0) taken.keep(zip.end());
  return {
    fileCount: files.length - missingCount,
    missingCount,
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

class FilesZip {
  readonly #pieces: Uint8Array[] = [];
  readonly #mtime: Date;
  readonly #zip: Zip;
  byteLength = 0;

  constructor(mtime: Date) {
    this.#mtime = mtime;
    this.#zip = new Zip((error, bytes) => {
      if (error !== null) throw error;
      this.#pieces.push(bytes);
    });
  }

  add(name: string, bytes: Uint8Array): void {
    addStored(this.#zip, name, bytes, this.#mtime);
    this.byteLength += bytes.length;
  }

  end(): Uint8Array {
    this.#zip.end();
    return Buffer.concat(this.#pieces);
  }
}

const EXTENSIONS: Readonly<Record<string, string>> = {
  'image/jpeg': '.jpg',
  'image/png': '.png',
  'application/pdf': '.pdf',
  'application/zip': '.zip',
  'application/json': '.json',
  'text/csv': '.csv',
  'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet': '.xlsx',
};

const READ_ME = `What is in here

customers-and-appliances.csv  one line per appliance with its customer, site and dates; can be imported again
tables/*.csv                  every table of the store; the ids tie them together
everything.json               the same tables, with their types

CSV files are UTF-8 with a byte order mark, commas and CRLF line ends (RFC 4180). Days are year-month-day, instants are UTC.
A text that a spreadsheet would run as a formula has an apostrophe in front. Amounts are in the unit at the end of the
column's name (kw, m, l ...); money is in the smallest unit of its currency.

Where photos and documents were asked for too: they are in ZIPs of their own beside this one, in a folder "files", each under
its SHA-256. files-belong-to.csv says what each is called and which row of which table it belongs to; a file of several
things has several lines. Without them, they are only in the program's data folder.

Where the change log was asked for: tables/op.csv, one line per row ever written, with each field, its value and the
operation that set it before.

Not in here: PINs, and the secrets by which the sealed records hide personal data. They are taken out of the log too, so its
hashes are those of the lines in the store.
`;
