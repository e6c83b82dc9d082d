/** A CSV file or a workbook as rows of text. What cannot be read whole is refused whole. */
import { unzipSync } from 'fflate';
import Papa from 'papaparse';
import { err, ok, type Result } from '../../../domain/result.ts';
import { csvTextBack } from '../../documents/csvCell.ts';

export type Table = {
  readonly encoding: 'UTF-8' | 'UTF-16' | 'Windows-1252' | 'workbook';
  readonly delimiter: string | null;
  readonly sheets: readonly string[];
  readonly sheetName: string | null;
  readonly headings: readonly string[];
  /** `row` as a spreadsheet counts it; rows without any text are left out. */
  readonly rows: readonly { readonly row: number; readonly cells: readonly string[] }[];
};

export type TableProblem = {
  readonly why:
    | 'too-large'
    | 'too-many-rows'
    | 'too-many-columns'
    | 'not-text'
    | 'not-a-table'
    | 'not-a-workbook'
    | 'quotes-broken'
    | 'no-rows'
    | 'sheet-missing';
  readonly row: number | null;
};

export const MOST_ROWS = 20_000;
const MOST_COLUMNS = 200;
export const LARGEST_FILE_BYTES = 32 * 1024 * 1024;
/** What a workbook may unpack to. */
const LARGEST_UNPACKED_BYTES = 256 * 1024 * 1024;

export async function readTable(bytes: Uint8Array, sheetName: string | null): Promise<Result<Table, TableProblem>> {
  if (bytes.length > LARGEST_FILE_BYTES) return problem('too-large');
  return isZip(bytes) ? readWorkbook(bytes, sheetName) : readText(bytes);
}

/** A CSV file, which needs no waiting. */
export function readText(bytes: Uint8Array): Result<Table, TableProblem> {
  const decoded = decodeText(bytes);
  if (decoded === null) return problem('not-text');
  const parsed = Papa.parse<string[]>(decoded.text, {
    delimiter: delimiterOf(decoded.text),
    header: false,
    skipEmptyLines: false,
  });
  const broken = parsed.errors.find(({ type }) => type === 'Quotes');
  if (broken !== undefined) return problem('quotes-broken', (broken.row ?? 0) + 1);
  return toTable(parsed.data, {
    encoding: decoded.encoding,
    delimiter: parsed.meta.delimiter,
    sheets: [],
    sheetName: null,
  });
}

/** Whichever stands most often in the first line that says anything, outside quotes. */
function delimiterOf(text: string): string {
  const line = /^\s*(?<head>(?:"(?:[^"]|"")*"|[^"\r\n])+)/u.exec(text.slice(0, 20_000))?.groups?.['head'] ?? '';
  const plain = line.replaceAll(/"(?:[^"]|"")*"/gu, '');
  const counts = [',', ';', '\t', '|'].map((mark) => ({ mark, count: plain.split(mark).length - 1 }));
  return counts.reduce((best, one) => (one.count > best.count ? one : best)).mark;
}

/** By byte order mark, by zeros where UTF-16 has them, as UTF-8 when that is without fault, else as Windows-1252. */
export function decodeText(
  bytes: Uint8Array,
): { readonly text: string; readonly encoding: 'UTF-8' | 'UTF-16' | 'Windows-1252' } | null {
  const encoding = sniffEncoding(bytes);
  const text = decode(bytes, encoding);
  if (text === null || HAS_CONTROLS.test(text)) return null;
  return {
    text: text.replace(/^\ufeff/u, ''),
    encoding: encoding === 'utf-8' ? 'UTF-8' : encoding === 'windows-1252' ? 'Windows-1252' : 'UTF-16',
  };
}

type Encoding = 'utf-8' | 'utf-16le' | 'utf-16be' | 'windows-1252';

function sniffEncoding(bytes: Uint8Array): Encoding {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return 'utf-16le';
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return 'utf-16be';
  const head = bytes.subarray(0, 4096);
  const zeros = [0, 0];
  for (const [index, byte] of head.entries()) if (byte === 0) zeros[index % 2] = (zeros[index % 2] ?? 0) + 1;
  const [even = 0, odd = 0] = zeros;
  const many = head.length / 5;
  if (odd > many && even < many / 10) return 'utf-16le';
  if (even > many && odd < many / 10) return 'utf-16be';
  return decode(bytes, 'utf-8') === null ? 'windows-1252' : 'utf-8';
}

function decode(bytes: Uint8Array, encoding: Encoding): string | null {
  try {
    return new TextDecoder(encoding, { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    return null;
  }
}

/** Any control character but tab and line ends: this is no text. */
const HAS_CONTROLS = /(?![\t\r\n\f\v])\p{Cc}(?<![\u0080-\u009f])/u;

async function readWorkbook(bytes: Uint8Array, sheetName: string | null): Promise<Result<Table, TableProblem>> {
  const unpacked = unpackedLength(bytes);
  if (unpacked === null) return problem('not-a-workbook');
  if (unpacked > LARGEST_UNPACKED_BYTES) return problem('too-large');
  // Only loaded when somebody brings a workbook: it is the largest package of the core.
  const { default: excel } = await import('exceljs');
  const workbook = new excel.Workbook();
  try {
    await workbook.xlsx.load(bytes.slice().buffer);
  } catch {
    return problem('not-a-workbook');
  }
  const sheets = workbook.worksheets.map(({ name }) => name);
  if (sheets.length === 0) return problem('not-a-workbook');
  const sheet =
    sheetName === null
      ? workbook.worksheets.find((one) => one.actualRowCount > 0)
      : workbook.worksheets.find((one) => one.name === sheetName);
  if (sheet === undefined) return problem(sheetName === null ? 'no-rows' : 'sheet-missing');
  if (sheet.rowCount > MOST_ROWS * 5) return problem('too-many-rows');
  if (sheet.columnCount > MOST_COLUMNS) return problem('too-many-columns');
  const width = sheet.columnCount;
  const rows: string[][] = [];
  for (let number = 1; number <= sheet.rowCount; number += 1) {
    const row = sheet.getRow(number);
    rows.push(Array.from({ length: width }, (_, index) => cellText(row.getCell(index + 1).value)));
  }
  return toTable(rows, { encoding: 'workbook', delimiter: null, sheets, sheetName: sheet.name });
}

/** A formula counts by the result that was saved with it; without one its own text is shown, and refused as a formula. */
function cellText(value: unknown): string {
  if (value === null || value === undefined) return '';
  if (value instanceof Date)
    return Number.isNaN(value.getTime()) ? '' : value.toISOString().replace(/T00:00:00.*$/u, '');
  if (typeof value !== 'object') return String(value);
  if ('richText' in value && Array.isArray(value.richText)) {
    return value.richText.map((part: { readonly text?: unknown }) => String(part.text ?? '')).join('');
  }
  if ('formula' in value || 'sharedFormula' in value) {
    const result = 'result' in value ? value.result : undefined;
    const isValue = result !== null && result !== undefined && !(typeof result === 'object' && 'error' in result);
    return isValue ? cellText(result) : `=${String('formula' in value ? value.formula : '')}`;
  }
  if ('text' in value) return cellText(value.text);
  if ('error' in value) return `=${String(value.error)}`;
  return '';
}

function toTable(
  lines: readonly (readonly string[])[],
  source: Omit<Table, 'headings' | 'rows'>,
): Result<Table, TableProblem> {
  const filled = lines.flatMap((cells, index) =>
    cells.some((cell) => cell.trim() !== '') ? [{ row: index + 1, cells }] : [],
  );
  const [head, ...rows] = filled;
  if (head === undefined || rows.length === 0) return problem('no-rows');
  if (rows.length > MOST_ROWS) return problem('too-many-rows', rows.length);
  if (head.cells.length > MOST_COLUMNS) return problem('too-many-columns');
  const headings = head.cells.map((cell) => cell.trim());
  if (headings.length < 2) return problem('not-a-table');
  return ok({ ...source, headings, rows: rows.map((one) => ({ ...one, cells: one.cells.map(csvTextBack) })) });
}

function isZip(bytes: Uint8Array): boolean {
  return bytes[0] === 0x50 && bytes[1] === 0x4b && bytes[2] === 0x03 && bytes[3] === 0x04;
}

/** As its directory says, without unpacking; null: no ZIP after all. */
function unpackedLength(bytes: Uint8Array): number | null {
  let length = 0;
  try {
    unzipSync(bytes, {
      filter: (file) => {
        length += file.originalSize;
        return false;
      },
    });
    return length;
  } catch {
    return null;
  }
}

function problem(why: TableProblem['why'], row: number | null = null): Result<never, TableProblem> {
  return err({ why, row });
}
