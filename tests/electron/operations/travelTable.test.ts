/** The firm's own travel times: loaded from a file, refused with their lines, used by planner and day sheet, laid aside. */
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type Office, setUpOffice } from '../../support/officeScenario.ts';
import { openTestCore, type TestCore } from '../../support/testCore.ts';

describe('travel times from a file', () => {
  let test: TestCore;
  let office: Office;
  beforeEach(async () => {
    test = openTestCore();
    office = await setUpOffice(test);
  });
  afterEach(() => test.remove());

  const put = async (text: string): Promise<string> => {
    const reply = await test.core.putFile(
      { bytes: new TextEncoder().encode(text), mediaType: 'text/csv', fileName: 'ways.csv', takenAt: null },
      'test-window',
    );
    if (!reply.ok) throw new Error(reply.code);
    return reply.attachmentId;
  };

  it('come with the board as far as its places go, and name what nobody bears', async () => {
    await test.must('jobs.open', { applianceId: office.applianceId, kind: 'service', note: null });
    const [site] = (await test.must('board.get', { from: '2026-03-02', to: '2026-03-06' })).unplaced;
    const attachmentId = await put(
      `from;to;minutes\nTobias Reyle;${site?.street}, ${site?.city};35\nB4T 2K1;${site?.city};20\nFar Point;Graven Bay;90\n`,
    );
    expect(await test.must('travel.loadTable', { attachmentId })).toEqual({ pairCount: 3 });
    expect((await test.must('travel.getTable', {})).table).toMatchObject({
      fileName: 'ways.csv',
      loadedByName: 'Maren Oduya',
      pairCount: 3,
      unknownNames: ['Far Point'],
      unknownCount: 1,
    });
    const { travel } = await test.must('board.get', { from: '2026-03-02', to: '2026-03-06' });
    expect(travel.pairs.map(({ minutes }) => minutes)).toEqual([35, 20]);
  });

  it('decide where the planner offers a slot', async () => {
    await test.must('staff.setHours', {
      staffId: office.technicianId,
      hours: [{ weekday: 2, fromMin: 480, toMin: 1020, breakFromMin: null, breakToMin: null }],
    });
    const { jobId } = await test.must('jobs.open', { applianceId: office.applianceId, kind: 'service', note: null });
    const [site] = (await test.must('board.get', { from: '2026-03-02', to: '2026-03-06' })).unplaced;
    const firstSlot = async () =>
      (await test.must('planning.slots', { jobId, from: '2026-03-02', to: '2026-03-06' })).slots[0];
    const before = await firstSlot();
    await test.must('travel.loadTable', {
      attachmentId: await put(`from,to,minutes\nTobias Reyle,${site?.city},47\n`),
    });
    expect(await firstSlot()).toMatchObject({ date: '2026-03-03', fromMin: 480 + 60, extraTravelMin: 94 });
    await test.must('travel.dropTable', {});
    expect((await test.must('travel.getTable', {})).table).toBeNull();
    expect(await firstSlot()).toEqual(before);
  });

  it('are refused whole, with their lines, and what was there stays', async () => {
    await test.must('travel.loadTable', { attachmentId: await put('from,to,minutes\nA,B,5\n') });
    expect(
      await test.ask('travel.loadTable', { attachmentId: await put('from,to,minutes\nA,B,5\nA,,five\n') }),
    ).toEqual({
      ok: false,
      error: {
        code: 'travel-lines-wrong',
        data: {
          count: 2,
          lines: [
            { row: 3, code: 'name-missing', column: 'to' },
            { row: 3, code: 'not-whole-minutes', typed: 'five' },
          ],
        },
      },
    });
    expect(await test.ask('travel.loadTable', { attachmentId: await put('start,end,minutes\nA,B,5\n') })).toMatchObject(
      {
        error: { code: 'travel-columns-missing', data: { missing: ['from', 'to'] } },
      },
    );
    expect(await test.ask('travel.loadTable', { attachmentId: await put('from\nA\n') })).toMatchObject({
      error: { code: 'table-not-read', data: { why: 'not-a-table' } },
    });
    expect((await test.must('travel.getTable', {})).table?.pairCount).toBe(1);
  });
});
