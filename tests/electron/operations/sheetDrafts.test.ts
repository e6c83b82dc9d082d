import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { SheetEdit } from '../../../domain/procedure/sheetEdit.ts';
import { type Office, PIN, setUpOffice } from '../../support/officeScenario.ts';
import { openTestCore, type TestCore } from '../../support/testCore.ts';
import { bookAndBegin } from '../../support/wholeJob.ts';

const SHEET_ID = 'general-practice-natural-gas';

describe('sheets in the making', () => {
  let test: TestCore;
  let office: Office;
  beforeEach(async () => {
    test = openTestCore();
    office = await setUpOffice(test);
    await test.must('session.signIn', { staffId: office.ownerId, pin: PIN });
  });
  afterEach(() => test.remove());

  async function start(sheetId = SHEET_ID, asSheet: { sheetId: string; title: string } | null = null) {
    const { revision } = await test.must('sheets.get', { sheetId, revision: null });
    const { draftId } = await test.must('sheetDrafts.start', { sheetId, revision, asSheet });
    return { draftId, revision };
  }
  async function edit(draftId: string, change: SheetEdit): Promise<number> {
    const { editCount } = await test.must('sheetDrafts.get', { draftId });
    return (await test.must('sheetDrafts.edit', { draftId, editCount, edit: change })).editCount;
  }
  const set = (value: string | number, ...path: (string | number)[]): SheetEdit => ({ kind: 'set', path, value });

  it('become a revision for visits from then on, while a running visit keeps its own', async () => {
    const run = await bookAndBegin(test, office);
    const ran = await test.must('visits.getRun', { visitId: run.visitId, runId: run.runId });
    await test.must('session.signIn', { staffId: office.ownerId, pin: PIN });
    const { draftId } = await start(ran.sheet.sheetId);
    const editCount = await edit(draftId, set(9, 'inputTolerancePct'));
    const published = await test.must('sheetDrafts.publish', { draftId, editCount });
    expect(published).toEqual({ sheetId: ran.sheet.sheetId, revision: '2026-03' });
    const newest = await test.must('sheets.get', { sheetId: ran.sheet.sheetId, revision: null });
    expect(newest).toMatchObject({ revision: '2026-03', issuedOn: '2026-03-02', inputTolerancePct: 9 });
    const still = await test.must('visits.getRun', { visitId: run.visitId, runId: run.runId });
    expect(still.sheet).toEqual(ran.sheet);
    expect(await test.ask('sheetDrafts.edit', { draftId, editCount, edit: set(5, 'inputTolerancePct') })).toMatchObject(
      {
        ok: false,
        error: { code: 'draft-ended' },
      },
    );
  });

  it('keep what is typed however wrong, name each wrong field, and publish nothing of it', async () => {
    const { draftId } = await start();
    await edit(draftId, set('about ten', 'inputTolerancePct'));
    await edit(draftId, set('nowhere', 'startup', 1, 'after'));
    const editCount = await edit(draftId, { kind: 'remove', path: ['firingPoints'], at: 0 });
    test.restart();
    await test.must('session.signIn', { staffId: office.ownerId, pin: PIN });
    const draft = await test.must('sheetDrafts.get', { draftId });
    expect(draft.body).toMatchObject({ inputTolerancePct: 'about ten' });
    const reply = await test.ask('sheetDrafts.publish', { draftId, editCount });
    expect(reply).toMatchObject({ ok: false, error: { code: 'bad-sheet' } });
    expect(JSON.stringify(reply)).toContain('inputTolerancePct');
    const [row] = (await test.must('sheets.list', {})).filter(({ sheetId }) => sheetId === SHEET_ID);
    expect(row?.revisions).toHaveLength(1);
  });

  it('take back one edit after the other, down to what they began as', async () => {
    const { draftId, revision } = await start();
    await edit(draftId, set('Another title', 'title'));
    let editCount = await edit(draftId, { kind: 'remove', path: ['limits'], at: 0 });
    for (let times = 0; times < 2; times += 1)
      editCount = (await test.must('sheetDrafts.undo', { draftId, editCount })).editCount;
    const published = await test.must('sheets.get', { sheetId: SHEET_ID, revision });
    const draft = await test.must('sheetDrafts.get', { draftId });
    expect(draft.body).toEqual({ ...published, revision: '2026-03', issuedOn: '2026-03-02' });
    expect(draft.lastEdit).toBeNull();
    expect(await test.ask('sheetDrafts.undo', { draftId, editCount })).toMatchObject({
      ok: false,
      error: { code: 'nothing-to-undo' },
    });
  });

  it('refuse an edit made on a state that is not there any more, and one that fits nowhere', async () => {
    const { draftId } = await start();
    const { editCount } = await test.must('sheetDrafts.get', { draftId });
    await edit(draftId, set('First', 'title'));
    expect(await test.ask('sheetDrafts.edit', { draftId, editCount, edit: set('Second', 'title') })).toMatchObject({
      ok: false,
      error: { code: 'draft-changed', data: { editCount: editCount + 1 } },
    });
    expect(
      await test.ask('sheetDrafts.edit', { draftId, editCount: editCount + 1, edit: set(1, 'nowhere', 'at', 'all') }),
    ).toMatchObject({ ok: false, error: { code: 'no-such-place' } });
  });

  it('make a sheet of its own name, and no revision older than the newest', async () => {
    const { draftId, revision } = await start(SHEET_ID, { sheetId: 'own-sheet', title: 'Our own sheet' });
    expect((await test.must('sheetDrafts.list', {})).map(({ title }) => title)).toEqual(['Our own sheet']);
    const { editCount } = await test.must('sheetDrafts.get', { draftId });
    expect(await test.must('sheetDrafts.publish', { draftId, editCount })).toEqual({
      sheetId: 'own-sheet',
      revision: '2026-03',
    });
    expect(await test.must('sheetDrafts.list', {})).toEqual([]);
    expect(
      await test.ask('sheetDrafts.start', {
        sheetId: SHEET_ID,
        revision,
        asSheet: { sheetId: 'own-sheet', title: 'Again' },
      }),
    ).toMatchObject({ ok: false, error: { code: 'sheet-exists' } });
    const second = await start('own-sheet');
    const older = await edit(second.draftId, set('2026-02', 'revision'));
    expect(await test.ask('sheetDrafts.publish', { draftId: second.draftId, editCount: older })).toMatchObject({
      ok: false,
      error: { code: 'revision-not-newer', data: { newest: '2026-03' } },
    });
    await test.must('sheetDrafts.discard', { draftId: second.draftId });
    expect(await test.must('sheetDrafts.list', {})).toEqual([]);
  });

  it('are taken up again when they were thrown away, with all that was typed', async () => {
    const { draftId } = await start(SHEET_ID, { sheetId: 'taken-up', title: 'Thrown away too soon' });
    await edit(draftId, set('Typed before', 'title'));
    const before = await test.must('sheetDrafts.get', { draftId });
    expect(await test.ask('sheetDrafts.takeUp', { draftId })).toMatchObject({
      error: { code: 'draft-not-thrown-away' },
    });
    await test.must('sheetDrafts.discard', { draftId });
    const [thrownAway] = await test.must('sheetDrafts.listDiscarded', {});
    expect(thrownAway).toMatchObject({ draftId, title: 'Typed before', discardedAt: test.now() });
    await test.must('sheetDrafts.takeUp', { draftId });
    expect(await test.must('sheetDrafts.get', { draftId })).toEqual(before);
    expect((await test.must('sheetDrafts.list', {})).map((row) => row.draftId)).toContain(draftId);
    expect((await test.must('sheetDrafts.listDiscarded', {})).map((row) => row.draftId)).not.toContain(draftId);
    const { editCount } = before;
    await test.must('sheetDrafts.publish', { draftId, editCount });
    expect(await test.ask('sheetDrafts.takeUp', { draftId })).toMatchObject({
      error: { code: 'draft-not-thrown-away' },
    });
  });

  it('never let the same revision come in with other contents', async () => {
    const sheet = await test.must('sheets.get', { sheetId: SHEET_ID, revision: null });
    const text = JSON.stringify({ ...sheet, inputTolerancePct: 24 });
    expect(await test.ask('sheets.import', { fileName: 'a.json', text })).toMatchObject({
      ok: false,
      error: { code: 'revision-differs' },
    });
  });
});
