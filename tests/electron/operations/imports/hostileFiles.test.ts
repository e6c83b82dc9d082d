/**
 * Files made to hurt, run as a careless person would: with the columns as they were guessed. Whatever a file is, all of it
 * is written, as the look beforehand said, or nothing; and what was written can be taken out to the row.
 */
import Database from 'better-sqlite3';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { type Random, seeded } from '../../../../assets/demo/generator/random.ts';
import { storePath } from '../../../../db/openStore.ts';
import { setUpOffice } from '../../../support/officeScenario.ts';
import { askTakeIn, takeOut } from '../../../support/takeList.ts';
import { openTestCore, type TestCore } from '../../../support/testCore.ts';

vi.setConfig({ testTimeout: 60_000 });

const HEAD = 'Customer number,Name,Phone,Street,City,Maker,Model,Serial number,Installed,Last service';
const ROWS = Array.from(
  { length: 12 },
  (_, index) =>
    `${70 + index},Zoë Łukaszka ${index},902 555 ${2000 + index},${index + 1} Capstan Row,Saint-Lô,Invented maker,T 24,ZK${400_100 + index},2019-06-${10 + index},2025-09-${10 + index}`,
);
const LIST = `${[HEAD, ...ROWS].join('\r\n')}\r\n`;
const LAST = ROWS.length - 1;

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);
const utf16 = (text: string, isBig: boolean): Uint8Array => {
  const bytes = Buffer.from(text, 'utf16le');
  return new Uint8Array(isBig ? bytes.swap16() : bytes);
};
const withLastRow = (change: (row: string) => string, head = HEAD): Uint8Array =>
  utf8(`${[head, ...ROWS.slice(0, -1), change(ROWS[LAST] ?? '')].join('\r\n')}\r\n`);
const joined = (...parts: readonly Uint8Array[]): Uint8Array => new Uint8Array(Buffer.concat(parts));

/** `all`: read right in spite of it. `none`: refused, the first eleven good rows with it. `either`: what it is cannot be told. */
const HOSTILE: readonly (readonly [what: string, bytes: Uint8Array, written: 'all' | 'none' | 'either'])[] = [
  ['UTF-8 with a byte order mark', utf8(`\ufeff${LIST}`), 'all'],
  ['UTF-16 little-endian without a mark', utf16(LIST, false), 'all'],
  ['UTF-16 big-endian with a mark', utf16(`\ufeff${LIST}`, true), 'all'],
  ['semicolons', utf8(LIST.replaceAll(',', ';')), 'all'],
  ['tabs and old line ends', utf8(LIST.replaceAll(',', '\t').replaceAll('\r\n', '\r')), 'all'],
  ['quotes around every cell', utf8(LIST.replaceAll(/[^,\r\n]+/g, (cell) => `"${cell}"`)), 'all'],
  [
    'one byte of another encoding in the last row',
    joined(utf8(LIST.slice(0, -40)), Uint8Array.of(0xe9), utf8(LIST.slice(-40))),
    'either',
  ],
  ['a character cut in two at the end', utf8(`${LIST}99,Zoë`).slice(0, -1), 'none'],
  ['a mark in the middle', withLastRow((row) => `\ufeff${row}`), 'either'],
  ['a zero byte in the last row', withLastRow((row) => row.replace('Capstan', 'Cap\0stan')), 'either'],
  ['UTF-8 said to be UTF-16 by its mark', joined(Uint8Array.of(0xff, 0xfe), utf8(LIST)), 'none'],
  ['a quote opened in the last row and never closed', withLastRow((row) => row.replace('Zoë', '"Zoë')), 'none'],
  ['text after a closing quote', withLastRow((row) => row.replace('Zoë', '"Zoë" "')), 'none'],
  ['a formula in the last row', withLastRow((row) => row.replace('Zoë', '=HYPERLINK(A1)')), 'none'],
  ['a formula behind a quote and a blank', withLastRow((row) => row.replace(/Zoë[^,]*/, '" =1+1"')), 'none'],
  ['a full-width formula', withLastRow((row) => row.replace('Zoë', '＝1+1')), 'none'],
  ['a heading twice', withLastRow((row) => `${row},B`, `${HEAD},Name`), 'none'],
  ['day and month to choose', utf8(LIST.replaceAll(/2019-06-(\d\d)/g, '03/04/2019')), 'none'],
  [
    'each day readable in one way only, in two orders',
    withLastRow((row) => row.replace(/2019-06-\d\d/, '25/12/2019').replace(/2025-09-\d\d/, '12/25/2024')),
    'all',
  ],
  ['a day no calendar has', withLastRow((row) => row.replace(/2019-06-\d\d/, '2019-02-30')), 'none'],
  ['a cell too many', withLastRow((row) => `${row},x`), 'none'],
  ['a row cut short', withLastRow((row) => row.slice(0, 20)), 'none'],
  ['the serial of another row', withLastRow((row) => row.replace(/ZK\d+/, 'ZK4OO1OO')), 'none'],
  ['a name of a million letters', withLastRow((row) => row.replace('Zoë', 'Z'.repeat(1_000_000))), 'none'],
  ['SQL for a name', withLastRow((row) => row.replace('Zoë', "'); DROP TABLE parties; --")), 'either'],
];

const LEFT_OUT =
  /^(op|device|imports|attachments|derived_tables|registration_gaps|sheet_revisions|(appliance|customer)_finds.*)$/;

describe('hostile lists', () => {
  let test: TestCore;
  beforeAll(async () => {
    test = openTestCore();
    await setUpOffice(test);
  });
  afterAll(() => test.remove());

  /** What people see: not the log, the files put in, nor what can be worked out again. */
  const tables = (): string => {
    const raw = new Database(storePath(test.folder), { readonly: true });
    try {
      const names = raw.prepare("SELECT name FROM sqlite_schema WHERE type = 'table'").pluck().all() as string[];
      return JSON.stringify(
        names
          .filter((name) => !LEFT_OUT.test(name))
          .map((name) => [name, raw.prepare(`SELECT * FROM "${name}" ORDER BY 1`).all()]),
      );
    } finally {
      raw.close();
    }
  };

  const tryTakeIn = async (bytes: Uint8Array): Promise<'all' | 'none'> => {
    const before = tables();
    const file = { bytes, mediaType: 'text/csv', fileName: 'list.csv', takenAt: null };
    const put = await test.core.putFile(file, 'test-window');
    const looked = put.ok ? await test.ask('imports.check', { attachmentId: put.attachmentId }) : null;
    if (!put.ok || looked === null || !looked.ok) {
      if (looked !== null && !looked.ok) expect(looked.error.code).toBe('table-not-read');
      expect(tables()).toBe(before);
      return 'none';
    }
    const { mapping, counts } = looked.value;
    const asked = { attachmentId: put.attachmentId, mapping, isKnownAgain: true };
    const run = await askTakeIn(test, asked);
    if (!run.ok) {
      expect(['import-has-errors', 'table-not-read', 'field-twice']).toContain(run.error.code);
      expect(tables()).toBe(before);
      return 'none';
    }
    expect(run.value.counts).toEqual(counts);
    expect(tables()).not.toBe(before);
    const undone = await takeOut(test, { importId: run.value.importId });
    expect(undone.counts).toEqual(counts);
    expect(tables()).toBe(before);
    return 'all';
  };

  it('takes the list in as it is', async () => {
    expect(await tryTakeIn(utf8(LIST))).toBe('all');
  });

  it.each(HOSTILE)('%s: all or nothing', async (_what, bytes, written) => {
    const found = await tryTakeIn(bytes);
    if (written !== 'either') expect(found).toBe(written);
  });

  it('changed at random in one to four places, a hundred times: all or nothing', async () => {
    const random = seeded(41);
    const outcomes = new Set<string>();
    for (let round = 0; round < 100; round += 1) outcomes.add(await tryTakeIn(mutated(random)));
    expect(outcomes).toEqual(new Set(['all', 'none']));
  });
});

function mutated(random: Random): Uint8Array {
  let bytes: Uint8Array = utf8(LIST);
  for (let count = random.integer(1, 4); count > 0; count -= 1) {
    const at = random.integer(0, bytes.length - 1);
    const [head, tail] = [bytes.subarray(0, at), bytes.subarray(at)];
    switch (random.integer(0, 4)) {
      case 0:
        bytes = joined(head, Uint8Array.of(random.integer(0, 255)), tail.subarray(1));
        break;
      case 1:
        bytes = joined(head, utf8(random.pick(['"', ',', '\n', '=', ';', '\0', '\ufeff', '""', '\t@'])), tail);
        break;
      case 2:
        bytes = head;
        break;
      case 3:
        bytes = joined(head, tail.subarray(random.integer(1, 40)));
        break;
      default:
        bytes = joined(head, bytes.subarray(at, at + random.integer(1, 200)), tail);
    }
  }
  return bytes;
}
