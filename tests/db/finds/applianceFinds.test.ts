import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { dropSearchCaches, ensureSearchCaches } from '../../../db/finds/searchCaches.ts';
import { storePath } from '../../../db/openStore.ts';
import { type Office, setUpOffice } from '../../support/officeScenario.ts';
import { openTestCore, type TestCore } from '../../support/testCore.ts';

describe('finding appliances', () => {
  let test: TestCore;
  let office: Office;
  beforeEach(async () => {
    test = openTestCore();
    office = await setUpOffice(test);
  });
  afterEach(() => test.remove());
  const find = async (query: string): Promise<readonly string[]> =>
    (await test.must('appliances.list', { query })).rows.map((row) => row.serial);

  it.each([
    'TK204417',
    'tk 2o4-4i7',
    'TKZO44l7',
    '2044',
    'Kestrel',
    'lowri fathom',
    'KÉSTREL',
    '902 555 0111',
    '9025550111',
    '0111',
    'Graven Bay T 24',
    'fathom 9',
    'B4T 1A6',
    'kestrel tk2044',
    't',
    'k',
    'lo fa',
    'tk 20',
    '+1',
    'invented',
  ])('finds it by %j', async (query) => {
    expect(await find(query)).toEqual(['TK204417']);
  });

  it.each(['TK204418', 'kestrel slipway', '555 0112', 'zz', 'w', 'ey', 'os', "' OR 1=1", 'kestrel NOT bay'])(
    'does not find it by %j',
    async (query) => {
      expect(await find(query)).toEqual([]);
    },
  );

  it('follows a new name, a new street, a new person on site and a new serial at once', async () => {
    const { party } = await test.must('customers.get', { customerId: office.customerId });
    const { partyId: _partyId, phoneE164: _phone, ...fields } = party;
    await test.must('customers.update', {
      customerId: office.customerId,
      party: { ...fields, name: 'Lowri Fulmar' },
      note: null,
    });
    expect(await find('kestrel fathom')).toEqual(['TK204417']); // still in the e-mail address
    expect(await find('fulmar')).toEqual(['TK204417']);
    const { site } = await test.must('sites.get', { siteId: office.siteId });
    await test.must('sites.update', { siteId: office.siteId, site: { ...site, street: '11 Oarlock Lane' } });
    expect(await find('oarlock')).toEqual(['TK204417']);
    const tenant = { ...fields, name: 'Ilse Dunlin', phoneTyped: '902 555 0177', email: null };
    await test.must('sites.addRole', { siteId: office.siteId, party: tenant, role: 'occupant', fromOn: null });
    expect(await find('dunlin')).toEqual(['TK204417']);
    const { appliance } = await test.must('appliances.get', { applianceId: office.applianceId });
    await test.must('appliances.update', {
      applianceId: office.applianceId,
      appliance: { ...appliance, serial: 'XR900001' },
    });
    expect(await find('xr9ooool')).toEqual(['XR900001']);
    expect(await find('tk204417')).toEqual([]);
  });

  it('turns pages without leaving one out or showing one twice', async () => {
    const { appliance } = await test.must('appliances.get', { applianceId: office.applianceId });
    for (let number = 1; number <= 24; number += 1) {
      await test.must('appliances.create', {
        siteId: office.siteId,
        appliance: { ...appliance, serial: `TK${300_000 + number}` },
        position: null,
        dates: [],
      });
    }
    const seen: string[] = [];
    let after: string | null = null;
    do {
      const page: { rows: { serial: string }[]; next: string | null } = await test.must('appliances.list', {
        query: 'kestrel',
        limit: 7,
        after,
      });
      seen.push(...page.rows.map((row) => row.serial));
      after = page.next;
    } while (after !== null);
    expect(seen).toHaveLength(25);
    expect(new Set(seen).size).toBe(25);
  });

  it('is made again, with the same content, when it was taken away', () => {
    const raw = new Database(storePath(test.folder));
    const read = () => raw.prepare('SELECT appliance_id, serial_key, words FROM appliance_finds ORDER BY 1').all();
    const before = read();
    expect(before).toHaveLength(1);
    dropSearchCaches(raw);
    expect(raw.prepare("SELECT count(*) FROM sqlite_schema WHERE name LIKE '%find%'").pluck().get()).toBe(0);
    ensureSearchCaches(raw);
    expect(read()).toEqual(before);
    raw.prepare("INSERT INTO appliance_finds_text (appliance_finds_text) VALUES ('integrity-check')").run();
    raw.close();
  });

  it('is made again when another version made it', () => {
    const raw = new Database(storePath(test.folder));
    raw.exec(`DROP TRIGGER find_appliance_changed;
      CREATE TRIGGER find_appliance_changed AFTER UPDATE OF model ON appliances BEGIN SELECT 1; END;
      UPDATE appliance_finds SET words = 'stale'`);
    ensureSearchCaches(raw);
    expect(raw.prepare('SELECT words FROM appliance_finds').pluck().get()).toContain('  kestrel');
    raw.close();
  });
});
