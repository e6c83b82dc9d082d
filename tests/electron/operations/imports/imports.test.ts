import { unzipSync } from 'fflate';
import Papa from 'papaparse';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { ImportMapping } from '../../../../electron/contract/imports.ts';
import { makeExport } from '../../../support/makeExport.ts';
import { type Office, PIN, setUpFirm, setUpOffice } from '../../../support/officeScenario.ts';
import { askTakeIn, askTakeOut, takeIn, takeOut } from '../../../support/takeList.ts';
import { openTestCore, type TestCore } from '../../../support/testCore.ts';

const HEAD =
  'Customer number,Name,E-mail,Phone,Street,Postcode,City,Maker,Model,Serial number,Fuel,Installed,Last service,Invoice';
const LIST = `${HEAD}
17,Ada Merganser,ada@merganser.example,902 555 0120,4 Capstan Row,B4T 1B2,Graven Bay,Invented maker,T 24,TK300101,NG,2019-06-04,2024-09-30,S-11
17,Ada Merganser,ada@merganser.example,902 555 0120,4 Capstan Row,B4T 1B2,Graven Bay,Invented maker,T 24,TK300101,NG,2019-06-04,2025-09-28,S-98
18,Bo Sandling,,902 555 0121,6 Capstan Row,B4T 1B2,Graven Bay,Invented maker,T 30,TK300102,propane,2021,,
19,Coll Brothers,,902 555 0122,1 Mill Lane,,Graven Bay,,,,,,,
`;

describe('taking a list in', () => {
  let test: TestCore;
  let office: Office;
  beforeEach(async () => {
    test = openTestCore();
    office = await setUpOffice(test);
  });
  afterEach(() => test.remove());

  const put = (text: string, fileName?: string): Promise<string> => putList(test, text, fileName);
  const check = async (attachmentId: string, change: Partial<ImportMapping> = {}) => {
    const first = await test.must('imports.check', { attachmentId });
    return test.must('imports.check', { attachmentId, mapping: { ...first.mapping, ...change } });
  };
  /** What people see: that something was tried stands in the log. */
  const tablesOf = () =>
    (JSON.parse(test.snapshot()) as [string, unknown[]][]).filter(
      ([name]) => !/^(op|device|imports|(appliance|customer)_finds.*)$/.test(name),
    );
  const issues = async (text: string, change: Partial<ImportMapping> = {}) =>
    (await check(await put(text), change)).issues.map(({ row, column, code }) => [row, column, code]);

  it('guesses the columns, says what would be written, writes nothing, then writes it all with its log', async () => {
    const attachmentId = await put(LIST);
    const before = test.snapshot();
    const looked = await test.must('imports.check', { attachmentId });
    expect(test.snapshot()).toBe(before);
    expect(looked).toMatchObject({
      encoding: 'UTF-8',
      rowCount: 4,
      issueCount: 0,
      counts: { customers: 3, sites: 3, appliances: 2, services: 2 },
    });
    expect(looked.mapping.columns).not.toContain(null);
    const { counts } = await takeIn(test, { attachmentId, mapping: looked.mapping });
    expect(counts).toEqual(looked.counts);
    const { rows } = await test.must('appliances.list', { query: 'tk3oo1o1' });
    expect(rows).toMatchObject([{ customerName: 'Ada Merganser', street: '4 Capstan Row', model: 'T 24' }]);
    const found = await test.must('appliances.get', { applianceId: rows[0]?.applianceId ?? '' });
    expect(found.visits.map(({ plannedOn, kind, outcome }) => [plannedOn, kind, outcome])).toEqual([
      ['2025-09-28', 'service', 'finished'],
      ['2024-09-30', 'service', 'finished'],
    ]);
    expect(found.dates).toMatchObject([
      { kind: 'installed', on: '2019-06-04', precision: 'day', source: 'imported list' },
    ]);
    const { operations } = { operations: JSON.parse(test.snapshot()) as [string, { entity: string }[]][] };
    const log = operations.find(([name]) => name === 'op')?.[1].map(({ entity }) => entity) ?? [];
    expect(log.filter((entity) => entity === 'parties')).toHaveLength(4);
  });

  it('undoes a whole import to the row, once', async () => {
    const attachmentId = await put(LIST);
    const { mapping } = await test.must('imports.check', { attachmentId });
    const before = tablesOf();
    const { importId } = await takeIn(test, { attachmentId, mapping });
    expect(tablesOf()).not.toEqual(before);
    await takeOut(test, { importId });
    expect(tablesOf()).toEqual(before);
    expect((await test.must('appliances.list', { query: 'TK3001' })).rows).toEqual([]);
    expect(await askTakeOut(test, { importId })).toMatchObject({
      ok: false,
      error: { code: 'already-undone' },
    });
    expect(await test.must('imports.list', {})).toMatchObject([{ importId, undoneByName: 'Maren Oduya' }]);
    expect(await askTakeIn(test, { attachmentId, mapping })).toMatchObject({ ok: true });
  });

  it('does not undo what later work hangs on, and says what that is', async () => {
    const attachmentId = await put(LIST);
    const { mapping } = await test.must('imports.check', { attachmentId });
    const { importId } = await takeIn(test, { attachmentId, mapping });
    const [appliance] = (await test.must('appliances.list', { query: 'TK300102' })).rows;
    await test.must('jobs.open', { applianceId: appliance?.applianceId ?? '', kind: 'service', note: null });
    const before = tablesOf();
    expect(await askTakeOut(test, { importId })).toMatchObject({
      ok: false,
      error: { code: 'later-work', data: { hangsOn: [{ what: 'jobs', count: 1 }] } },
    });
    expect(tablesOf()).toEqual(before);
    const { party } = await test.must('customers.get', { customerId: appliance?.customerId ?? '' });
    const { partyId: _partyId, phoneE164: _phone, ...fields } = party;
    await test.must('customers.update', {
      customerId: appliance?.customerId ?? '',
      party: { ...fields, name: 'Bo Sandling-Teal' },
      note: null,
    });
    expect(await askTakeOut(test, { importId })).toMatchObject({
      error: {
        data: {
          hangsOn: [
            { what: 'customers', count: 1 },
            { what: 'parties', count: 1 },
            { what: 'jobs', count: 1 },
          ],
        },
      },
    });
  });

  it('asks about day and month, takes the answer, and still refuses what contradicts it', async () => {
    const list =
      'Name,Street,City,Maker,Model,Serial,Installed\nA B,1 X,Y,M,T,S100001,03/04/2024\nC D,2 X,Y,M,T,S100002,25/12/2023\n';
    expect(await issues(list)).toEqual([[2, 6, 'day-month-ambiguous']]);
    expect(await issues(list, { dayOrder: 'day-first' })).toEqual([]);
    expect(await issues(list, { dayOrder: 'month-first' })).toEqual([[3, 6, 'not-a-day']]);
  });

  it('never guesses a heading that stands twice, and takes no field from two columns', async () => {
    const attachmentId = await put('Name,Name,City\nA,B,Y\n');
    const { mapping } = await test.must('imports.check', { attachmentId });
    expect(mapping.columns).toEqual([null, null, 'city']);
    const twice: ImportMapping = { ...mapping, columns: ['customerName', 'customerName', 'city'] };
    expect(await askTakeIn(test, { attachmentId, mapping: twice })).toMatchObject({
      ok: false,
      error: { code: 'field-twice', data: { field: 'customerName' } },
    });
  });

  it('suggests who may be on file or twice in the list, and joins them only when told', async () => {
    const list =
      'Name,Phone,Street,City\nL. Kestrel,902 555 0111,9 Fathom Street,Graven Bay\nAda Tern,902 555 0180,1 X,Y\nA. Tern,902 555 0180,2 X,Y\n';
    const attachmentId = await put(list);
    const { mapping, suggestions, counts } = await test.must('imports.check', { attachmentId });
    expect(counts.customers).toBe(3);
    expect(suggestions).toMatchObject([
      { row: 2, others: [{ customerId: office.customerId, because: ['same-phone'] }] },
      { row: 4, others: [{ customerId: null, row: 3, because: ['same-phone'] }] },
    ]);
    const decisions = [
      { row: 2, customerId: office.customerId },
      { row: 4, sameAsRow: 3 },
    ];
    const decided = await test.must('imports.check', { attachmentId, mapping, decisions });
    expect(decided).toMatchObject({ suggestionCount: 0, counts: { customers: 1, sites: 3 } });
    await takeIn(test, { attachmentId, mapping, decisions });
    const { sites } = await test.must('customers.get', { customerId: office.customerId });
    expect(sites).toHaveLength(2);
    const bad = [{ row: 2, sameAsRow: 3 }];
    expect(await test.ask('imports.check', { attachmentId, mapping, decisions: bad })).toMatchObject({
      error: { code: 'not-found' },
    });
  });

  it('adds past services to appliances on file by their serial', async () => {
    const attachmentId = await put('Serial,Date of service,Technician\ntk 2044-17,2025-12-01,Old Firm\n');
    const { mapping } = await test.must('imports.check', { attachmentId });
    await takeIn(test, { attachmentId, mapping });
    const { visits } = await test.must('appliances.get', { applianceId: office.applianceId });
    expect(visits).toMatchObject([{ kind: 'service', plannedOn: '2025-12-01', outcome: 'finished' }]);
  });

  it('asks before the same file is taken in twice', async () => {
    const attachmentId = await put('Name,City\nA B,Y\n');
    const { mapping } = await test.must('imports.check', { attachmentId });
    await takeIn(test, { attachmentId, mapping });
    const again = await put('Name,City\nA B,Y\n', 'renamed.csv');
    expect(await askTakeIn(test, { attachmentId: again, mapping })).toMatchObject({
      error: { code: 'imported-before' },
    });
    expect(await askTakeIn(test, { attachmentId: again, mapping, isKnownAgain: true })).toMatchObject({
      ok: true,
    });
  });

  it('shows a list again that was looked at, until one of its name is taken in', async () => {
    const waiting = async () => (await test.must('imports.listWaiting', {})).map(({ fileName }) => fileName);
    await put('Name,City\n,Y\n', 'cards.csv');
    test.wait(60);
    await put('Name,City\nA B,Y\n,Z\n', 'cards.csv');
    await put('Name,City\n,Y\n', 'others.csv');
    expect(await waiting()).toEqual(expect.arrayContaining(['cards.csv', 'others.csv']));
    expect(await waiting()).toHaveLength(2);
    test.wait(60);
    const right = await put('Name,City\nA B,Y\n', 'cards.csv');
    const { mapping } = await test.must('imports.check', { attachmentId: right });
    const { importId } = await takeIn(test, { attachmentId: right, mapping });
    expect(await waiting()).toEqual(['others.csv']);
    await takeOut(test, { importId });
    expect(await waiting()).toEqual(['others.csv']);
    test.wait(61 * 86_400);
    expect(await waiting()).toEqual([]);
  });

  it('does not even keep a file of 200 MB, and a CSV never passes for a picture', async () => {
    const before = test.snapshot();
    const huge = { bytes: new Uint8Array(200 * 1024 * 1024), mediaType: 'text/csv', fileName: 'x.csv', takenAt: null };
    expect(await test.core.putFile(huge, 'test-window')).toEqual({ ok: false, code: 'too-large' });
    const named = { bytes: new TextEncoder().encode('a,b'), mediaType: 'image/png', fileName: 'x.png', takenAt: null };
    expect(await test.core.putFile(named, 'test-window')).toEqual({ ok: false, code: 'type-refused' });
    expect(test.snapshot()).toBe(before);
  });

  it('gives everything out: no secrets, no formula, and a list that another store takes in whole', async () => {
    const { party } = await test.must('customers.get', { customerId: office.customerId });
    const { partyId: _partyId, phoneE164: _phone, ...fields } = party;
    await test.must('customers.update', {
      customerId: office.customerId,
      party: { ...fields, note: '=cmd|calc', contactName: '-Ann' },
      note: null,
    });
    const { attachmentId, files } = await makeExport(test);
    const file = await test.core.getFile(attachmentId, 'test-window');
    const entries = unzipSync(file?.bytes ?? new Uint8Array());
    expect(
      Object.keys(entries)
        .filter((name) => name.endsWith('.csv'))
        .toSorted(),
    ).toEqual(files.map(({ name }) => name).toSorted());
    const text = (name: string) => new TextDecoder('utf-8', { ignoreBOM: false }).decode(entries[name]);
    const everything = JSON.parse(text('everything.json')) as { tables: Record<string, object[]> };
    expect(JSON.stringify(everything)).not.toMatch(/pin_hash|scrypt/);
    expect(everything.tables['parties']).toMatchObject([{ name: 'Lowri Kestrel', note: '=cmd|calc' }]);
    const partiesCsv = Papa.parse<Record<string, string>>(text('tables/parties.csv'), {
      header: true,
      skipEmptyLines: true,
    });
    expect(partiesCsv.data).toMatchObject([{ name: 'Lowri Kestrel', note: "'=cmd|calc", contact_name: "'-Ann" }]);
    const sitesCsv = Papa.parse<Record<string, string>>(text('tables/sites.csv'), {
      header: true,
      skipEmptyLines: true,
    });
    expect(sitesCsv.data[0]?.['longitude']).toBe('-63.57');

    const other = openTestCore();
    try {
      const { ownerId } = await setUpFirm(other);
      await other.must('session.signIn', { staffId: ownerId, pin: PIN });
      const list = entries['customers-and-appliances.csv'] ?? new Uint8Array();
      const reply = await other.core.putFile(
        { bytes: list, mediaType: 'text/csv', fileName: 'all.csv', takenAt: null },
        'test-window',
      );
      const given = reply.ok ? reply.attachmentId : '';
      const looked = await other.must('imports.check', { attachmentId: given });
      expect(looked).toMatchObject({ issueCount: 0, counts: { customers: 1, sites: 1, appliances: 1, services: 0 } });
      await takeIn(other, { attachmentId: given, mapping: looked.mapping });
      const { rows } = await other.must('appliances.list', { query: 'kestrel' });
      const [appliance] = rows;
      expect(await other.must('appliances.get', { applianceId: appliance?.applianceId ?? '' })).toMatchObject({
        appliance: { serial: 'TK204417', maker: 'Invented maker', ratedInputKw: 25, plateFuel: 'natural-gas' },
        dates: [{ kind: 'installed', on: '2026-02-26' }],
      });
    } finally {
      other.remove();
    }
  });
});

describe('faults of a list', () => {
  let test: TestCore;
  beforeAll(async () => {
    test = openTestCore();
    await setUpOffice(test);
  });
  afterAll(() => test.remove());

  it.each([
    ['a formula in a name', 'Name,City\n=HYPERLINK("x"),Y\n', [[2, 0, 'formula-cell']]],
    ['a long number spoiled by a spreadsheet', 'Name,Phone\nA B,9.02556E+11\n', [[2, 1, 'spoiled-number']]],
    ['a missing name', 'Name,City\n,Y\n', [[2, 0, 'needed']]],
    ['no e-mail address', 'Name,E-mail\nA B,a.b.example\n', [[2, 1, 'not-an-email']]],
    ['a row too short', 'Name,City,Phone\nA B,Y\n', [[2, null, 'too-few-cells']]],
    ['a row too long', 'Name,City\nA B,Y,Z\n', [[2, null, 'too-many-cells']]],
    ['a name over two lines', 'Name,City\n"A\nB",Y\n', [[2, 0, 'line-break']]],
    ['an unknown country', 'Name,Country\nA B,Atlantis\n', [[2, 1, 'unknown-word']]],
    ['an appliance without a site', 'Name,Maker,Model,Serial\nA B,M,T,S100001\n', [[2, null, 'needed']]],
    [
      'a service in the future',
      'Name,Street,City,Maker,Model,Serial,Last service\nA B,1 X,Y,M,T,S100001,2026-03-03\n',
      [[2, 6, 'day-in-future']],
    ],
    [
      'a half-known day of service',
      'Name,Street,City,Maker,Model,Serial,Last service\nA B,1 X,Y,M,T,S100001,2024\n',
      [[2, 6, 'not-a-day']],
    ],
    [
      'dates that cannot follow each other',
      'Name,Street,City,Maker,Model,Serial,Made,Installed\nA B,1 X,Y,M,T,S1,2024,2019\n',
      [[2, null, 'dates-out-of-order']],
    ],
    [
      'one serial on two sites',
      'Name,Street,City,Maker,Model,Serial\nA B,1 X,Y,M,T,S100001\nC D,2 X,Y,M,T,S1OOOO1\n',
      [[3, null, 'serial-twice']],
    ],
    [
      'a serial on file',
      'Name,Street,City,Maker,Model,Serial\nA B,1 X,Y,Invented maker,T 24,TK 204417\n',
      [[2, null, 'serial-on-file']],
    ],
    [
      'a number with two meanings',
      'Name,Street,City,Maker,Model,Serial,Altitude\nA B,1 X,Y,M,T,S1,"1,234"\n',
      [[2, 6, 'number-ambiguous']],
    ],
    [
      'one customer number, two customers',
      'Customer number,Name\n7,A B\n7,C D\n',
      [[3, null, 'number-of-two-customers']],
    ],
    [
      'a services list with an unknown serial',
      'Serial,Last service\nZZ1,2024-01-01\n',
      [[2, null, 'serial-not-on-file']],
    ],
    ['a list of nothing we file', 'Colour,City\nred,Y\n', [[1, null, 'needed']]],
  ])('says by row and cell: %s; and writes nothing', async (_what, text, wanted) => {
    const attachmentId = await putList(test, text);
    const { mapping, issues: found } = await test.must('imports.check', { attachmentId });
    expect(found.map(({ row, column, code }) => [row, column, code])).toEqual(wanted);
    const before = test.snapshot();
    expect(await askTakeIn(test, { attachmentId, mapping })).toMatchObject({
      ok: false,
      error: { code: 'import-has-errors' },
    });
    expect(test.snapshot()).toBe(before);
  });
});

async function putList(test: TestCore, text: string, fileName = 'list.csv'): Promise<string> {
  const bytes = new TextEncoder().encode(text);
  const reply = await test.core.putFile({ bytes, mediaType: 'text/csv', fileName, takenAt: null }, 'test-window');
  if (!reply.ok) throw new Error(reply.code);
  return reply.attachmentId;
}
