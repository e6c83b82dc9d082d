import Database from 'better-sqlite3';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { storePath } from '../../../db/openStore.ts';
import { type Office, PIN, setUpOffice } from '../../support/officeScenario.ts';
import { readPdf } from '../../support/readPdf.ts';
import { openTestCore, type TestCore } from '../../support/testCore.ts';
import { type BookedRun, bookAndBegin, readStartupNotes, walkRun } from '../../support/wholeJob.ts';

/** One sealed startup, amended and tampered with step by step: the cases build on each other. */
describe('amendments to a sealed record', () => {
  let test: TestCore;
  let office: Office;
  let run: BookedRun;
  let serial: string;
  beforeAll(async () => {
    test = openTestCore();
    office = await setUpOffice(test);
    run = await bookAndBegin(test, office);
    await walkRun(test, office, run, readStartupNotes());
    await test.must('visits.finish', { visitId: run.visitId, outcome: 'finished', reason: null, labourMin: 180 });
  }, 60_000);
  afterAll(() => test.remove());

  const amend = (change: { path: string | null; what?: string; isNow: string }) =>
    test.ask('records.amend', { what: null, because: 'read the plate again', runId: run.runId, ...change });

  it('have nothing to stand beside before the record is sealed', async () => {
    expect(await amend({ path: '/appliance/serial', isNow: 'X' })).toMatchObject({
      ok: false,
      error: { code: 'not-sealed' },
    });
    await test.must('visits.seal', { visitId: run.visitId, runId: run.runId });
  });

  it('stand beside what was sealed, chained, with who and why', async () => {
    const before = await test.must('records.getAmendments', { runId: run.runId });
    expect(before.amendments).toEqual([]);
    serial = before.fields.find(({ path }) => path === '/appliance/serial')?.says ?? '';
    const reading = before.fields.find(({ what }) => /CO₂.*high/.test(what));
    expect(reading?.says).toMatch(/^\d/);
    test.wait(3600);
    expect(await amend({ path: '/appliance/serial', isNow: 'KW240099999' })).toMatchObject({
      ok: true,
      value: { sequence: 2 },
    });
    expect(await amend({ path: reading?.path ?? '', isNow: '9.2 %' })).toMatchObject({
      ok: true,
      value: { sequence: 3 },
    });
    expect(await amend({ path: null, what: 'Colour of the hatch', isNow: 'grey' })).toMatchObject({ ok: true });
    const { amendments, fields } = await test.must('records.getAmendments', { runId: run.runId });
    expect(amendments.map(({ what, was, isNow, byName }) => [what, was, isNow, byName])).toEqual([
      ['Serial number', serial, 'KW240099999', 'Tobias Reyle'],
      [reading?.what, reading?.says, '9.2 %', 'Tobias Reyle'],
      ['Colour of the hatch', null, 'grey', 'Tobias Reyle'],
    ]);
    // The record itself says what it said.
    expect(fields).toEqual(before.fields);
    const verified = await test.must('records.verify', { visitId: run.visitId });
    expect(verified.isIntact).toBe(true);
    expect(verified.entries.map(({ kind }) => kind)).toEqual(['sealed', 'amendment', 'amendment', 'amendment']);
  });

  it('are refused where they say nothing new, name no field, or come from somebody without a licence', async () => {
    expect(await amend({ path: '/appliance/serial', isNow: serial })).toMatchObject({
      error: { code: 'nothing-amended' },
    });
    expect(await amend({ path: '/findings/0/verdict', isNow: 'within' })).toMatchObject({
      error: { code: 'no-such-field' },
    });
    await test.must('session.signIn', { staffId: office.ownerId, pin: PIN });
    expect(await amend({ path: '/run/readings/0', isNow: '1' })).toMatchObject({ error: { code: 'needs-licence' } });
    await test.must('session.signIn', { staffId: office.helperId, pin: PIN });
    expect(await amend({ path: '/appliance/serial', isNow: 'X' })).toMatchObject({ error: { code: 'not-allowed' } });
    await test.must('session.signIn', { staffId: office.ownerId, pin: PIN });
  });

  it('are judged: a stop by one opens a make-safe, is shown, and is not amended away again', async () => {
    await test.must('session.signIn', { staffId: office.technicianId, pin: PIN });
    const { fields } = await test.must('records.getAmendments', { runId: run.runId });
    const co = fields.find(({ what }) => /CO as measured/.test(what) && /high/.test(what));
    const path = co?.path ?? '';
    expect(co?.says).toMatch(/^\d+ ppm$/);
    const before = test.snapshot();
    expect(await amend({ path, isNow: 'a bit more' })).toMatchObject({ error: { code: 'cannot-read' } });
    expect(await amend({ path, isNow: co?.says ?? '' })).toMatchObject({ error: { code: 'nothing-amended' } });
    expect(test.snapshot()).toBe(before);

    const reply = await amend({ path, isNow: '9999' });
    if (!reply.ok) throw new Error(reply.error.code);
    expect(reply.value.judged).toContainEqual({ subject: 'limit:coPpm@high', verdict: 'stop' });
    const open = await test.must('makeSafes.list', {});
    expect(open).toMatchObject([{ makeSafeId: reply.value.makeSafeId, applianceId: office.applianceId }]);
    expect(open[0]?.what).toContain(`9999 ppm (amended after sealing, was ${co?.says})`);
    const { amendments } = await test.must('records.getAmendments', { runId: run.runId });
    expect(amendments.at(-1)).toMatchObject({ was: co?.says, isNow: '9999 ppm', judged: reply.value.judged });
    const { gaps } = await test.must('packets.check', { runId: run.runId });
    expect(gaps.map(({ code }) => code)).toContain('amended-outside');

    const refused = { ok: false, error: { code: 'needs-new-reading' } };
    expect(await amend({ path, isNow: co?.says ?? '' })).toMatchObject(refused);
    expect(await amend({ path, isNow: '40 ppm' })).toMatchObject(refused);
    expect(await test.must('makeSafes.list', {})).toHaveLength(1);
    // An answer is one of the sheet's, and one that stops, stops.
    const smell = fields.find(({ what }) => /[Ss]mell/.test(what));
    expect(await amend({ path: smell?.path ?? '', isNow: 'well' })).toMatchObject({ error: { code: 'not-an-option' } });
    expect(await amend({ path: smell?.path ?? '', isNow: 'smell' })).toMatchObject({
      ok: true,
      value: { judged: [{ verdict: 'stop' }] },
    });
    expect(await amend({ path: smell?.path ?? '', isNow: 'none' })).toMatchObject(refused);
    await test.must('session.signIn', { staffId: office.ownerId, pin: PIN });
  });

  it('are printed in the packet', async () => {
    const { packetPdfId } = await test.must('packets.build', { runId: run.runId, isDraft: false, gapReason: 'test' });
    const file = await test.core.getFile(packetPdfId, 'test-window');
    const { pages } = await readPdf(file?.bytes ?? new Uint8Array());
    const text = pages.join(' ');
    expect(text).toContain('Amended after sealing');
    expect(text).toContain('KW240099999');
    expect(text).toContain('Stop: ');
    expect(text).toContain(serial);
    expect(text).toContain('read the plate again');
  });

  it('show in words what somebody altered behind the record’s back', async () => {
    const raw = new Database(storePath(test.folder));
    raw.prepare('UPDATE seals SET canonical = replace(canonical, ?, ?) WHERE sequence = 1').run(serial, 'FORGED0001');
    raw.close();
    const verified = await test.must('records.verify', { visitId: run.visitId });
    expect(verified.isIntact).toBe(false);
    const [first, second] = verified.entries;
    expect(first?.problems.map(({ code }) => code)).toEqual(['bytes-altered']);
    expect(first?.alterations).toContainEqual({ path: '/appliance/serial', was: serial, isNow: 'FORGED0001' });
    expect(second?.problems.map(({ code }) => code)).toEqual(expect.arrayContaining(['wrong-previous']));
  });
});
