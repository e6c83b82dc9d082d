/** What falls due, through the operations on a real store: kept by every write, equal to what a rebuild gives. */
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { storePath } from '../../../db/openStore.ts';
import { derivationSentence } from '../../../domain/coverage/derivation.ts';
import type { OutputOf } from '../../../electron/contract/index.ts';
import { type Office, PIN, setUpOffice } from '../../support/officeScenario.ts';
import { openTestCore, type TestCore } from '../../support/testCore.ts';
import { bookAndBegin } from '../../support/wholeJob.ts';

describe('what falls due', () => {
  let test: TestCore;
  let office: Office;
  beforeEach(async () => {
    test = openTestCore();
    office = await setUpOffice(test);
  });
  afterEach(() => test.remove());

  const setStarted = (on: string): Promise<unknown> =>
    test.must('appliances.setDate', {
      applianceId: office.applianceId,
      date: { kind: 'started', on, precision: 'day', source: 'startup visit' },
    });
  const deadline = async () => (await test.must('deadlines.list', {})).rows[0];
  const service = async () => (await test.must('serviceDue.list', {})).rows[0];

  it('shows the last day to register before anybody began, with how it came about', async () => {
    const row = await deadline();
    expect(row).toMatchObject({ stage: 'not-begun', dueOn: '2026-03-28', daysLeft: 26, alarm: 'none' });
    expect(row === undefined ? '' : derivationSentence(row.derivation)).toBe(
      '30 days from installation on 26 Feb 2026, counting the day after as day 1: Sat 28 Mar 2026. No rule of the maker is on file: the earliest date and the shortest usual time were taken.',
    );
    expect(await test.must('deadlines.get', {})).toMatchObject({
      toSubmit: 1,
      late: 0,
      withMaker: 0,
      weeks: [{ mondayOn: '2026-03-23', count: 1 }],
      makers: [{ maker: 'Invented maker', count: 1 }],
    });
  });

  it('follows the date it counts from, and turns late in the site’s own zone', async () => {
    await test.must('appliances.setDate', {
      applianceId: office.applianceId,
      date: { kind: 'installed', on: '2026-02-01', precision: 'day', source: 'invoice' },
    });
    expect(await deadline()).toMatchObject({ dueOn: '2026-03-03', daysLeft: 1, alarm: 'days-1' });
    // 2 March 13:00 UTC + 38.5 h is 4 March 03:30 UTC, and still 3 March in Halifax.
    test.wait(38.5 * 3600);
    expect(await deadline()).toMatchObject({ daysLeft: 0, alarm: 'days-1' });
    expect((await test.must('deadlines.list', { show: 'late' })).rows).toEqual([]);
    test.wait(3600);
    expect((await test.must('deadlines.list', { show: 'late' })).rows).toMatchObject([{ daysLeft: -1, alarm: 'late' }]);
    expect(await test.must('deadlines.get', {})).toMatchObject({ late: 1 });
  });

  it('presses from half of the time on, and no more once it is with the maker', async () => {
    const pressing = async () => (await test.must('deadlines.list', { show: 'pressing' })).rows;
    expect(await pressing()).toEqual([]);
    // 26 February + 15 days: 13 March, 15 of 30 days left.
    test.wait(10 * 86_400);
    expect(await pressing()).toEqual([]);
    test.wait(86_400);
    expect(await pressing()).toMatchObject([{ daysLeft: 15, alarm: 'half' }]);
    test.wait(30 * 86_400);
    expect(await pressing()).toMatchObject([{ daysLeft: -15, alarm: 'late' }]);
    await test.must('registrations.decide', {
      applianceId: office.applianceId,
      by: 'owner',
      ownerConsentOn: null,
      followUpOn: '2026-05-01',
    });
    const raw = new Database(storePath(test.folder));
    raw.exec("UPDATE registrations SET state = 'submitted', submitted_on = '2026-03-20'");
    raw.close();
    let after: string | null = null;
    do after = (await test.must('dues.rebuild', { after })).next;
    while (after !== null);
    expect(await pressing()).toEqual([]);
    // Handed in, nothing is late any more, whatever day it is.
    expect((await test.must('deadlines.list', { show: 'late' })).rows).toEqual([]);
    expect((await test.must('deadlines.list', { show: 'open' })).rows).toMatchObject([{ stage: 'submitted' }]);
    expect(await test.must('deadlines.get', {})).toMatchObject({ toSubmit: 0, late: 0, withMaker: 1, weeks: [] });
  });

  it('takes up the startup: stage, technician, gaps counted once and again after a change', async () => {
    await bookAndBegin(test, office);
    const found = await test.must('deadlines.list', { show: 'recording', staffId: office.technicianId });
    expect(found.rows).toMatchObject([{ stage: 'recording', technicianName: 'Tobias Reyle' }]);
    const counted = await countUntilDone(test);
    const list = await test.must('registrations.list', {});
    expect(counted).toBe(list.rows[0]?.missingCount);
    const { gaps } = await test.must('registrations.get', { applianceId: office.applianceId });
    expect(counted).toBe(gaps.length);
    expect((await test.must('deadlines.list', { show: 'ready' })).rows).toEqual([]);
    await test.must('session.signIn', { staffId: office.ownerId, pin: PIN });
    await test.must('sites.addPermit', {
      siteId: office.siteId,
      permit: { number: 'P-7', issuer: 'Town', state: 'issued', on: '2026-02-20' },
    });
    expect(await countUntilDone(test)).toBe(gaps.length - 1);
  });

  it('dates services from the startup, offers a first call, and forgets it once made', async () => {
    expect(await service()).toMatchObject({ dueOn: '2027-02-26', sureness: 'general-rule' });
    await setStarted('2026-03-01');
    expect(await service()).toMatchObject({
      dueOn: '2027-03-01',
      latestOn: '2027-03-01',
      area: 'B4T',
      month: '2027-02',
    });
    test.wait(15 * 86_400);
    const calls = await test.must('serviceDue.list', { kind: 'first-call' });
    expect(calls.rows).toMatchObject([{ windowFrom: '2026-03-15', latestOn: '2026-03-29', phone: '902 555 0111' }]);
    const closing = { applianceId: office.applianceId, kind: 'first-call', on: '2026-03-17', note: null } as const;
    await test.must('serviceDue.closeContact', { ...closing, outcome: 'done' });
    await test.must('serviceDue.closeContact', { ...closing, outcome: 'not-wanted' });
    expect((await test.must('serviceDue.list', { kind: 'first-call' })).rows).toEqual([]);
  });

  it('reminds by cadence, only where somebody agreed, and stops at the booking', async () => {
    await test.must('appliances.setDate', {
      applianceId: office.applianceId,
      date: { kind: 'installed', on: '2025-04-05', precision: 'day', source: 'invoice' },
    });
    await setStarted('2025-04-10');
    const stands = async () => (await test.must('reminders.list', { kinds: ['service'] })).rows;
    expect(await stands()).toMatchObject([
      { stage: 'before-60', sendOn: '2026-02-09', nextSendOn: '2026-03-11', channels: [], partyName: 'Lowri Kestrel' },
    ]);
    expect((await test.must('reminders.list', { onlyReachable: true })).rows).toEqual([]);
    const { party } = await test.must('customers.get', { customerId: office.customerId });
    const consent = { partyId: party.partyId, purpose: 'service-due', source: 'asked at handover' } as const;
    await test.must('customers.recordConsent', { ...consent, channel: 'e-mail', granted: true, on: '2026-01-10' });
    await test.must('customers.recordConsent', { ...consent, channel: 'letter', granted: true, on: '2026-01-10' });
    await test.must('customers.recordConsent', { ...consent, channel: 'letter', granted: false, on: '2026-02-01' });
    expect(await stands()).toMatchObject([{ channels: ['e-mail'], key: expect.stringContaining('before-60') }]);
    const { jobId } = await test.must('jobs.open', { applianceId: office.applianceId, kind: 'service', note: null });
    expect(await service()).toMatchObject({ jobId, visitId: null });
    const { visitId } = await test.must('visits.book', {
      jobIds: [jobId],
      plannedOn: '2026-03-20',
      plannedFrom: null,
      plannedTo: null,
      durationMin: 90,
      crew: [{ staffId: office.technicianId, role: 'licensed' }],
      isPencilled: false,
      note: null,
    });
    expect(await service()).toMatchObject({ jobId, visitId, bookedOn: '2026-03-20' });
    expect(await stands()).toEqual([]);
    expect((await test.must('serviceDue.get', {})).rounds).toMatchObject([{ area: 'B4T', count: 1, bookedCount: 1 }]);
    await test.must('visits.cancel', { visitId, reason: 'away' });
    expect(await stands()).toMatchObject([{ stage: 'before-60' }]);
  });

  it('holds the same rows as a rebuild from the truth, after every kind of write', async () => {
    await bookAndBegin(test, office);
    await test.must('session.signIn', { staffId: office.ownerId, pin: PIN });
    await setStarted('2026-03-01');
    const kept = duesOf(test);
    expect(kept.length).toBeGreaterThanOrEqual(4);
    let after: string | null = null;
    do after = (await test.must('dues.rebuild', { after })).next;
    while (after !== null);
    expect(duesOf(test)).toEqual(kept);
  });

  it('replaces the rows of an older version of the rules when the store opens', async () => {
    const kept = duesOf(test);
    test.core.close();
    const raw = new Database(storePath(test.folder));
    raw.exec('UPDATE derived_tables SET rules_version = 0; DELETE FROM appliance_dues');
    raw.close();
    test.restart();
    expect(duesOf(test)).toEqual(kept);
  });

  it('leaves the rows alone when the write fails', async () => {
    const before = duesOf(test);
    const reply = await test.ask('appliances.setDate', {
      applianceId: office.applianceId,
      date: { kind: 'started', on: '2025-01-01', precision: 'day', source: 'typed' },
    });
    expect(reply).toMatchObject({ ok: false, error: { code: 'dates-out-of-order' } });
    expect(duesOf(test)).toEqual(before);
  });

  it('pages through the list without losing or repeating a line', async () => {
    for (let index = 0; index < 12; index += 1) {
      await test.must('appliances.create', {
        siteId: office.siteId,
        appliance: {
          ...(await test.must('appliances.get', { applianceId: office.applianceId })).appliance,
          serial: `TK9${index}`,
        },
        position: null,
        dates: [{ kind: 'installed', on: '2026-02-26', precision: 'day', source: 'fitter' }],
      });
    }
    const seen: string[] = [];
    let after: string | null = null;
    do {
      const found: OutputOf<'deadlines.list'> = await test.must('deadlines.list', { limit: 5, after });
      seen.push(...found.rows.map(({ serial }) => serial));
      after = found.next;
    } while (after !== null);
    expect(new Set(seen).size).toBe(13);
    expect(seen).toHaveLength(13);
  });

  it('gives an appliance’s cover with what is missing, and takes down that the maker was told of a new owner', async () => {
    const { cover, sheet } = await test.must('coverage.get', { applianceId: office.applianceId });
    expect(sheet).toBeNull();
    expect(cover).toMatchObject({ terms: [], registration: { kind: 'open', due: { on: '2026-03-28' } } });
    await test.must('coverage.recordTransfer', {
      applianceId: office.applianceId,
      changedOn: '2026-02-01',
      toldOn: '2026-02-20',
      number: 'T-1',
    });
  });
});

async function countUntilDone(test: TestCore): Promise<number | null | undefined> {
  for (;;) {
    const { rows, uncounted } = await test.must('deadlines.list', {});
    if (uncounted === 0) return rows[0]?.missingCount;
  }
}

function duesOf(test: TestCore): readonly unknown[] {
  const raw = new Database(storePath(test.folder), { readonly: true });
  try {
    return raw.prepare('SELECT * FROM appliance_dues ORDER BY appliance_id, kind').all();
  } finally {
    raw.close();
  }
}
