/** The list of registrations: a page at a time, what is to submit first, gaps counted for what is shown. */
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { storePath } from '../../../db/openStore.ts';
import type { OutputOf } from '../../../electron/contract/index.ts';
import { type Office, PIN, setUpOffice } from '../../support/officeScenario.ts';
import { openTestCore, type TestCore } from '../../support/testCore.ts';
import { bookAndBegin } from '../../support/wholeJob.ts';

describe('registrations, a page at a time', () => {
  let test: TestCore;
  let office: Office;
  beforeEach(async () => {
    test = openTestCore();
    office = await setUpOffice(test);
  });
  afterEach(() => test.remove());

  /** Somebody decided who registers: from then on it is a registration. */
  const addRegistration = async (serial: string, installedOn: string | null): Promise<string> => {
    const { appliance } = await test.must('appliances.get', { applianceId: office.applianceId });
    const { applianceId } = await test.must('appliances.create', {
      siteId: office.siteId,
      appliance: { ...appliance, serial },
      position: null,
      dates: installedOn === null ? [] : [{ kind: 'installed', on: installedOn, precision: 'day', source: 'fitter' }],
    });
    await test.must('registrations.decide', {
      applianceId,
      by: 'owner',
      ownerConsentOn: null,
      followUpOn: '2026-03-09',
    });
    return applianceId;
  };

  const pagesOf = async (openOnly: boolean): Promise<readonly (readonly string[])[]> => {
    const pages: string[][] = [];
    let after: string | null = null;
    do {
      const found: OutputOf<'registrations.list'> = await test.must('registrations.list', {
        openOnly,
        limit: 2,
        after,
      });
      pages.push(found.rows.map(({ serial }) => serial));
      after = found.next;
    } while (after !== null);
    return pages;
  };

  it('goes through all of them once: to submit by last day, without a day after those, then what is with the maker', async () => {
    await addRegistration('LATER', '2026-02-20');
    await addRegistration('NO-DAY', null);
    await addRegistration('SOONER', '2026-02-10');
    const withMaker = await addRegistration('WITH-MAKER', '2026-01-10');
    const confirmed = await addRegistration('CONFIRMED', '2026-01-05');
    const raw = new Database(storePath(test.folder));
    const setState = raw.prepare(
      "UPDATE registrations SET state = ?, submitted_on = '2026-02-01' WHERE appliance_id = ?",
    );
    setState.run('submitted', withMaker);
    setState.run('confirmed', confirmed);
    raw.close();
    expect(await pagesOf(true)).toEqual([['SOONER', 'LATER'], ['NO-DAY', 'WITH-MAKER'], []]);
    expect(await pagesOf(false)).toEqual([['SOONER', 'LATER'], ['NO-DAY', 'CONFIRMED'], ['WITH-MAKER']]);
    const { rows } = await test.must('registrations.list', { followUpBy: '2026-03-08' });
    expect(rows).toEqual([]);
    expect((await test.must('registrations.list', { followUpBy: '2026-03-09' })).rows).toHaveLength(4);
  });

  it('offers the day on which the customer agreed, until they take it back, and keeps nothing by itself', async () => {
    const applianceId = await addRegistration('SOONER', '2026-02-10');
    const { partyId } = (await test.must('customers.get', { customerId: office.customerId })).party;
    const say = (granted: boolean, on: string, purpose: 'registration' | 'offers' = 'registration') =>
      test.must('customers.recordConsent', { partyId, purpose, channel: 'phone', granted, on, source: 'by phone' });
    const offered = async () => {
      const { consentOnFileOn, ownerConsentOn } = await test.must('registrations.get', { applianceId });
      expect(ownerConsentOn).toBeNull();
      return consentOnFileOn;
    };
    expect(await offered()).toBeNull();
    await say(true, '2026-02-01', 'offers');
    expect(await offered()).toBeNull();
    await say(true, '2026-02-11');
    expect(await offered()).toBe('2026-02-11');
    await say(false, '2026-02-12');
    expect(await offered()).toBeNull();
  });

  it('counts what is missing for the shown lines only', async () => {
    await bookAndBegin(test, office);
    await test.must('session.signIn', { staffId: office.ownerId, pin: PIN });
    await addRegistration('SOONER', '2026-02-10');
    const counted = (): unknown => {
      const raw = new Database(storePath(test.folder), { readonly: true });
      const count = raw.prepare('SELECT count(*) FROM registration_gaps').pluck().get();
      raw.close();
      return count;
    };
    const first = await test.must('registrations.list', { limit: 1 });
    expect(first).toMatchObject({ rows: [{ serial: 'SOONER', missingCount: 0 }], uncounted: 0 });
    expect(counted()).toBe(0);
    const second = await test.must('registrations.list', { limit: 1, after: first.next });
    const { gaps } = await test.must('registrations.get', { applianceId: office.applianceId });
    expect(second.rows).toMatchObject([{ serial: 'TK204417', missingCount: gaps.length }]);
    expect(gaps.length).toBeGreaterThan(5);
    expect(counted()).toBe(1);
  });
});
