import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { storePath } from '../../../db/openStore.ts';
import { type Office, setUpOffice } from '../../support/officeScenario.ts';
import { openTestCore, type TestCore } from '../../support/testCore.ts';

describe('finding whoever is on the phone', () => {
  let test: TestCore;
  let office: Office;
  beforeEach(async () => {
    test = openTestCore();
    office = await setUpOffice(test);
  });
  afterEach(() => test.remove());
  const find = async (query: string): Promise<readonly string[]> =>
    (await test.must('customers.list', { query })).rows.map((row) => row.name);

  it.each([
    'l',
    'Ke',
    'KÉSTREL',
    'lowri fathom',
    '0111',
    '902 555',
    'fathom 9',
    'B4T 1A6',
    'tk 2o4-4i7',
    'TK20',
    '2044',
  ])('finds them by %j', async (query) => {
    expect(await find(query)).toEqual(['Lowri Kestrel']);
  });

  it.each(['w', 'ey', 'TK204418', 'kestrel slipway', "' OR 1=1", 'kestrel NOT bay'])(
    'does not find them by %j',
    async (query) => {
      expect(await find(query)).toEqual([]);
    },
  );

  it('shows the first page for what has no letters, and turns pages in the order they were filed', async () => {
    const { party } = await test.must('customers.get', { customerId: office.customerId });
    const { partyId: _partyId, phoneE164: _phone, ...fields } = party;
    for (const name of ['Kestrel Z', 'Kestrel Y', 'Kestrel X']) {
      await test.must('customers.create', {
        party: { ...fields, name, phoneTyped: null, email: null },
        note: null,
        isKnownNew: true,
      });
    }
    expect(await find(' - ')).toHaveLength(4);
    const first = await test.must('customers.list', { query: 'kestrel', limit: 2 });
    const second = await test.must('customers.list', { query: 'kestrel', limit: 2, after: first.next });
    expect([...first.rows, ...second.rows].map((row) => row.name)).toEqual([
      'Lowri Kestrel',
      'Kestrel Z',
      'Kestrel Y',
      'Kestrel X',
    ]);
  });

  it('follows a new name, street and serial, and an appliance that was moved away', async () => {
    const { site } = await test.must('sites.get', { siteId: office.siteId });
    await test.must('sites.update', { siteId: office.siteId, site: { ...site, street: '11 Oarlock Lane' } });
    expect(await find('oarlock')).toEqual(['Lowri Kestrel']);
    const { appliance } = await test.must('appliances.get', { applianceId: office.applianceId });
    await test.must('appliances.update', {
      applianceId: office.applianceId,
      appliance: { ...appliance, serial: 'XR900001' },
    });
    expect(await find('xr9ooool')).toEqual(['Lowri Kestrel']);
    expect(await find('tk204417')).toEqual([]);
    const raw = new Database(storePath(test.folder));
    raw.exec("UPDATE placements SET to_on = '2026-03-01'");
    expect(await find('xr900001')).toEqual([]);
    raw.exec("UPDATE parties SET search_text = 'ilse dunlin'");
    expect(await find('dunlin')).toEqual(['Lowri Kestrel']);
    expect(await find('kestrel')).toEqual([]);
    raw.prepare("INSERT INTO customer_finds_text (customer_finds_text) VALUES ('integrity-check')").run();
    raw.close();
  });
});
