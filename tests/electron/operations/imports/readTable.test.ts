/** Files as programs and people really write them (RFC 4180 and its breaches), and files made to hurt. */
import ExcelJS from 'exceljs';
import { zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import {
  LARGEST_FILE_BYTES,
  MOST_ROWS,
  readTable,
  type Table,
} from '../../../../electron/operations/imports/readTable.ts';

const TEXT = 'Name,City\r\nZoë Łukaszka,Saint-Lô\r\n';
const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);
const utf16 = (text: string, isBig: boolean, hasMark: boolean): Uint8Array => {
  const bytes = Buffer.from(hasMark ? `\ufeff${text}` : text, 'utf16le');
  return new Uint8Array(isBig ? bytes.swap16() : bytes);
};
const read = async (bytes: Uint8Array, sheet: string | null = null): Promise<Table> => {
  const result = await readTable(bytes, sheet);
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  return result.value;
};

describe('readTable', () => {
  it.each([
    ['UTF-8', utf8(TEXT), 'UTF-8'],
    ['UTF-8 with a mark', utf8(`\ufeff${TEXT}`), 'UTF-8'],
    ['UTF-16 little-endian with a mark', utf16(TEXT, false, true), 'UTF-16'],
    ['UTF-16 big-endian with a mark', utf16(TEXT, true, true), 'UTF-16'],
    ['UTF-16 little-endian without', utf16(TEXT, false, false), 'UTF-16'],
    ['UTF-16 big-endian without', utf16(TEXT, true, false), 'UTF-16'],
  ])('reads %s', async (_name, bytes, encoding) => {
    expect(await read(bytes)).toMatchObject({
      encoding,
      headings: ['Name', 'City'],
      rows: [{ row: 2, cells: ['Zoë Łukaszka', 'Saint-Lô'] }],
    });
  });

  it('reads Windows-1252: 0xE9 is é, 0x80 is €, 0x92 is ’ (the WHATWG Encoding Standard’s index)', async () => {
    const bytes = new Uint8Array([...utf8('Name;Note\n'), 0x52, 0x65, 0x6e, 0xe9, 0x3b, 0x80, 0x20, 0x4f, 0x92, 0x0a]);
    expect(await read(bytes)).toMatchObject({
      encoding: 'Windows-1252',
      delimiter: ';',
      rows: [{ row: 2, cells: ['René', '€ O’'] }],
    });
  });

  it.each([',', ';', '\t', '|'])('finds the delimiter %j', async (mark) => {
    const table = await read(utf8(`a${mark}b\n1${mark}2\n3${mark}4\n`));
    expect(table).toMatchObject({ delimiter: mark, headings: ['a', 'b'] });
  });

  it('keeps quoted commas, quotes and line ends, counts rows as a spreadsheet does and skips empty ones', async () => {
    const table = await read(utf8('a,b\n"x, ""y""","one\ntwo"\n\n,\nz,4\n'));
    expect(table.rows).toEqual([
      { row: 2, cells: ['x, "y"', 'one\ntwo'] },
      { row: 5, cells: ['z', '4'] },
    ]);
  });

  it.each([
    ['a quote never closed', utf8('a,b\n1,2\n"3,4\n5,6\n'), 'quotes-broken'],
    ['text after a closing quote', utf8('a,b\n"1"x,2\n'), 'quotes-broken'],
    ['nothing', utf8(''), 'no-rows'],
    ['only headings', utf8('a,b\n'), 'no-rows'],
    ['one column', utf8('a\n1\n'), 'not-a-table'],
    ['zeros', new Uint8Array(5000), 'not-text'],
    ['a program', Uint8Array.from({ length: 3000 }, (_, index) => (index * 37) % 256), 'not-text'],
    ['a ZIP that is no workbook', zipSync({ 'x.txt': utf8('x') }), 'not-a-workbook'],
    ['a ZIP cut short', zipSync({ 'x.txt': utf8('x'.repeat(500)) }).slice(0, 60), 'not-a-workbook'],
    ['too many columns', utf8(`${'a,'.repeat(300)}b\n${'1,'.repeat(300)}2\n`), 'too-many-columns'],
    ['one row too many', utf8(`a,b\n${'1,2\n'.repeat(MOST_ROWS + 1)}`), 'too-many-rows'],
    ['a file beyond the limit', new Uint8Array(LARGEST_FILE_BYTES + 1), 'too-large'],
  ])('refuses %s as a whole', async (_name, bytes, why) => {
    expect(await readTable(bytes, null)).toMatchObject({ ok: false, error: { why } });
  });

  it('refuses a workbook that unpacks to far more than it weighs', async () => {
    const bomb = zipSync({ 'xl/worksheets/sheet1.xml': new Uint8Array(300 * 1024 * 1024) }, { level: 9 });
    expect(bomb.length).toBeLessThan(2_000_000);
    expect(await readTable(bomb, null)).toMatchObject({ ok: false, error: { why: 'too-large' } });
  });

  it('reads a workbook: dates as days, long numbers whole, formulas by their result, rich text and links as text', async () => {
    const workbook = new ExcelJS.Workbook();
    workbook.addWorksheet('Empty');
    const sheet = workbook.addWorksheet('List');
    sheet.addRow(['Name', 'Serviced', 'Serial', 'Sum', 'Rich', 'Link', 'Broken']);
    sheet.addRow([
      'Zoë',
      new Date(Date.UTC(2024, 1, 29)),
      204417001234,
      { formula: '1+1', result: 2 },
      { richText: [{ text: 'a' }, { text: 'b' }] },
      { text: 'z@x.example', hyperlink: 'mailto:z@x.example' },
      { formula: '1/0', result: { error: '#DIV/0!' } },
    ]);
    const table = await read(new Uint8Array(await workbook.xlsx.writeBuffer()));
    expect(table).toMatchObject({ encoding: 'workbook', sheets: ['Empty', 'List'], sheetName: 'List' });
    expect(table.rows[0]?.cells).toEqual(['Zoë', '2024-02-29', '204417001234', '2', 'ab', 'z@x.example', '=1/0']);
    expect(await readTable(new Uint8Array(await workbook.xlsx.writeBuffer()), 'Nowhere')).toMatchObject({
      ok: false,
      error: { why: 'sheet-missing' },
    });
  });
});
