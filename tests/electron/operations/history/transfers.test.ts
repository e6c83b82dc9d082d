/** A house handed to the wrong person, and put back: as it was, with both in the history. */
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type Office, setUpOffice } from '../../../support/officeScenario.ts';
import { openTestCore, type TestCore } from '../../../support/testCore.ts';

const DAY_S = 86_400;

describe('a house handed over by mistake', () => {
  let test: TestCore;
  let office: Office;
  beforeEach(async () => {
    test = openTestCore();
    office = await setUpOffice(test);
  });
  afterEach(() => test.remove());

  const handOver = async (name: string, on = '2026-03-01'): Promise<string> => {
    const { party } = await test.must('customers.get', { customerId: office.customerId });
    const { partyId: _partyId, phoneE164: _phone, ...fields } = party;
    const to = { ...fields, name, email: null, phoneTyped: '902 555 0160' };
    return (await test.must('sites.transfer', { siteId: office.siteId, on, to })).customerId;
  };
  const last = async () => {
    const found = await test.must('sites.lastTransfer', { siteId: office.siteId });
    if (found === null) throw new Error('it was never handed over');
    return found;
  };
  const putBack = async (why = 'the house next door was meant') =>
    test.ask('sites.takeBackTransfer', { siteId: office.siteId, transferId: (await last()).transferId, why });
  const seen = async () => {
    const { roles, customerId } = await test.must('sites.get', { siteId: office.siteId });
    const { owners } = await test.must('history.get', { applianceId: office.applianceId });
    const { rows } = await test.must('appliances.list', { query: 'kestrel' });
    return { roles, customerId, owners, found: rows.length };
  };

  it('is as it was before, days later too, and the history tells of both', async () => {
    await test.must('sites.addRole', {
      siteId: office.siteId,
      party: { partyId: (await test.must('customers.get', { customerId: office.customerId })).party.partyId },
      role: 'occupant',
      fromOn: '2020-05-01',
    });
    const before = await seen();
    expect(await test.must('sites.lastTransfer', { siteId: office.siteId })).toBeNull();
    const wrong = await handOver('Signe Avocet');
    expect(await last()).toMatchObject({ fromName: 'Lowri Kestrel', toName: 'Signe Avocet', restsOnIt: [] });
    expect(await seen()).not.toEqual(before);
    test.wait(3 * DAY_S);
    expect(await putBack()).toMatchObject({ ok: true, value: { customerId: office.customerId } });
    expect(await seen()).toEqual(before);
    const { entries } = await test.must('history.get', { applianceId: office.applianceId });
    expect(entries.filter(({ kind }) => kind === 'owner').map(({ on, what, detail }) => [on, what, detail])).toEqual([
      ['2026-03-05', 'taken-back', 'the house next door was meant'],
      ['2026-03-01', 'mistaken', 'Signe Avocet'],
    ]);
    // Who was filed for it stays on file, without the house.
    expect((await test.must('customers.get', { customerId: wrong })).sites).toEqual([]);
    expect(await test.must('sites.lastTransfer', { siteId: office.siteId })).toBeNull();
  });

  it('goes back one change of hands at a time, the newest first, and not twice', async () => {
    await handOver('Signe Avocet', '2026-02-01');
    const first = await last();
    test.wait(60);
    await handOver('Coll Dunlin', '2026-03-01');
    const { siteId } = office;
    expect(
      await test.ask('sites.takeBackTransfer', { siteId, transferId: first.transferId, why: 'wrong' }),
    ).toMatchObject({ error: { code: 'not-the-last-transfer' } });
    expect(await putBack()).toMatchObject({ ok: true });
    expect((await seen()).owners[0]).toMatchObject({ name: 'Signe Avocet', toOn: null });
    expect(await putBack()).toMatchObject({ ok: true, value: { customerId: office.customerId } });
    expect(
      await test.ask('sites.takeBackTransfer', { siteId, transferId: first.transferId, why: 'again' }),
    ).toMatchObject({ error: { code: 'not-the-last-transfer' } });
  });

  it('stays where something was done in the new owner’s name, and says what', async () => {
    const customerId = await handOver('Signe Avocet');
    const { party } = await test.must('customers.get', { customerId });
    await test.must('agreements.write', {
      applianceId: office.applianceId,
      agreement: { partyId: party.partyId, number: null, fromOn: '2026-03-02', toOn: null, everyMonths: 12 },
    });
    const before = test.snapshot();
    expect(await putBack()).toMatchObject({ error: { code: 'transfer-rested-on', data: { what: ['agreements'] } } });
    expect(test.snapshot()).toBe(before);
  });

  it('stays where somebody changed who is who since', async () => {
    await handOver('Signe Avocet');
    const { roles } = await test.must('sites.get', { siteId: office.siteId });
    const owner = roles.find(({ name }) => name === 'Signe Avocet');
    await test.must('sites.removeRole', { roleId: owner?.roleId ?? '' });
    expect(await putBack()).toMatchObject({ error: { code: 'transfer-rested-on', data: { what: ['roles'] } } });
  });

  it('stays once the maker was told, and needs a reason', async () => {
    await handOver('Signe Avocet');
    expect(await putBack('  ')).toMatchObject({ error: { code: 'bad-input' } });
    await test.must('coverage.recordTransfer', {
      applianceId: office.applianceId,
      changedOn: '2026-03-01',
      toldOn: '2026-03-02',
      number: null,
    });
    expect(await putBack()).toMatchObject({ error: { code: 'transfer-rested-on', data: { what: ['notices'] } } });
  });
});
