/** Long lists in and out while others go on: all or nothing whatever ends it, and nobody's own work lost meanwhile. */
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { rebuildAllDues } from '../../../../db/dues/refreshDues.ts';
import { type LongWrite, openLongWrite } from '../../../../db/longWrite.ts';
import { storePath } from '../../../../db/openStore.ts';
import { parties } from '../../../../db/schema/index.ts';
import { createListWorks, type ListResult, type ListStep } from '../../../../electron/operations/imports/listWorks.ts';
import { longList } from '../../../support/longList.ts';
import { type Office, PIN, setUpOffice } from '../../../support/officeScenario.ts';
import { askTakeOut, takeIn, takeOut } from '../../../support/takeList.ts';
import { openTestCore, type TestCore } from '../../../support/testCore.ts';

/** Enough that the search is filled anew at the end and not row by row. */
const MANY = 600;

describe('a long list', () => {
  let test: TestCore;
  let office: Office;
  beforeEach(async () => {
    test = openTestCore();
    office = await setUpOffice(test);
  });
  afterEach(() => test.remove());

  const putList = async (rowCount: number): Promise<string> => {
    const bytes = new TextEncoder().encode(longList(rowCount));
    const file = { bytes, mediaType: 'text/csv', fileName: 'long.csv', takenAt: null };
    const reply = await test.core.putFile(file, 'test-window');
    if (!reply.ok) throw new Error(reply.code);
    return reply.attachmentId;
  };
  const looked = async (rowCount: number) => {
    const attachmentId = await putList(rowCount);
    const { mapping } = await test.must('imports.check', { attachmentId });
    return { attachmentId, mapping };
  };
  const customerCount = async (): Promise<number> =>
    (await test.must('customers.list', { query: 'capstan', limit: 200 })).rows.length;
  const raw = <T>(read: (raw: Database.Database) => T): T => {
    const opened = new Database(storePath(test.folder));
    try {
      return read(opened);
    } finally {
      opened.close();
    }
  };
  const rowsOf = (sql: string): unknown[] => raw((opened) => opened.prepare(sql).raw().all());
  const CACHES = [
    'SELECT appliance_id, serial_key, words FROM appliance_finds ORDER BY 1',
    'SELECT customer_id, serial_key, words FROM customer_finds ORDER BY 1',
    'SELECT * FROM appliance_dues ORDER BY 1, 2',
  ];

  it('is found and falls due as if each row had been entered by itself, and is gone from both when it is out', async () => {
    const before = CACHES.map(rowsOf);
    const { importId, counts } = await takeIn(test, await looked(MANY));
    expect(counts).toEqual({ customers: MANY, sites: MANY, appliances: MANY, services: MANY });
    const fromTruth = [
      'SELECT appliance_id, serial_key, words FROM appliance_find_rows ORDER BY 1',
      'SELECT customer_id, serial_key, words FROM customer_find_rows ORDER BY 1',
    ];
    expect(CACHES.slice(0, 2).map(rowsOf)).toEqual(fromTruth.map(rowsOf));
    const dues = rowsOf(CACHES[2] ?? '');
    raw((opened) => rebuildAllDues(opened, test.now()));
    expect(dues).toEqual(rowsOf(CACHES[2] ?? ''));
    expect((await test.must('appliances.list', { query: 'tk3oo599' })).rows).toHaveLength(1);
    await takeOut(test, { importId });
    expect(CACHES.map(rowsOf)).toEqual(before);
    expect(raw((opened) => opened.pragma('foreign_key_check'))).toEqual([]);
    expect((await test.must('appliances.list', { query: 'tk3oo599' })).rows).toEqual([]);
  });

  it('lets others look at the store as it was, and keeps what they save until it is through', async () => {
    const ready = await looked(20);
    const { workId } = await test.must('imports.start', ready);
    expect(await customerCount()).toBe(0);
    expect((await test.must('app.status', {})).warnings).toContain('list-under-way');
    const saved = test.must('jobs.open', { applianceId: office.applianceId, kind: 'repair', note: 'No hot water.' });
    expect(await test.ask('imports.start', { ...ready, isKnownAgain: true })).toMatchObject({
      error: { code: 'list-work-going' },
    });
    const { jobId } = await saved;
    expect(await test.must('imports.follow', { workId })).toMatchObject({ isDone: true, counts: { customers: 20 } });
    expect(await customerCount()).toBe(20);
    expect((await test.must('jobs.list', {})).map((job) => job.jobId)).toContain(jobId);
    expect(await test.must('imports.listWorks', {})).toEqual([]);
    expect((await test.must('app.status', {})).warnings).not.toContain('list-under-way');
  });

  it('leaves nothing when it is stopped, in and out, and can be begun again', async () => {
    const ready = await looked(20);
    const first = await test.must('imports.start', ready);
    expect(await test.must('imports.stop', first)).toEqual({ isStopped: true });
    expect(await test.ask('imports.follow', first)).toMatchObject({ error: { code: 'list-work-stopped' } });
    expect([await customerCount(), await test.must('imports.list', {})]).toEqual([0, []]);
    const { importId } = await takeIn(test, ready);
    const out = await test.must('imports.startUndo', { importId });
    expect(await test.must('imports.stop', out)).toEqual({ isStopped: true });
    expect(await customerCount()).toBe(20);
    expect(await test.must('imports.stop', out)).toEqual({ isStopped: false });
    await takeOut(test, { importId });
    expect(await customerCount()).toBe(0);
  });

  it('says after a start in the middle that nothing was taken in, until somebody has read it', async () => {
    const ready = await looked(20);
    await test.must('imports.start', ready);
    test.restart();
    await test.must('session.signIn', { staffId: office.ownerId, pin: PIN });
    expect(await customerCount()).toBe(0);
    expect((await test.must('app.status', {})).warnings).toContain('list-cut-off');
    const [cutOff, ...others] = await test.must('imports.listWorks', {});
    expect(others).toEqual([]);
    expect(cutOff).toMatchObject({
      kind: 'take-in',
      fileName: 'long.csv',
      begunByName: 'Maren Oduya',
      isGoing: false,
    });
    await test.must('imports.forgetCutOff', { workId: cutOff?.workId ?? '' });
    expect(await test.must('imports.listWorks', {})).toEqual([]);
    expect((await test.must('app.status', {})).warnings).not.toContain('list-cut-off');
    await takeIn(test, ready);
    expect(await customerCount()).toBe(20);
  });

  it('is not taken out when something points at it that only a look into every table finds', async () => {
    const { importId } = await takeIn(test, await looked(20));
    const [appliance] = (await test.must('appliances.list', { query: 'tk300007' })).rows;
    // A gas supply of another site names it; nothing of the import itself was changed.
    const { gasSupply } = await test.must('sites.get', { siteId: office.siteId });
    if (gasSupply === null) throw new Error('the office has a gas supply');
    await test.must('sites.setGasSupply', {
      siteId: office.siteId,
      gasSupply: {
        ...gasSupply,
        loads: [{ name: 'next door', inputKw: 24, applianceId: appliance?.applianceId ?? '' }],
      },
    });
    expect(await askTakeOut(test, { importId })).toMatchObject({
      error: { code: 'later-work', data: { hangsOn: [{ what: 'gas_loads', count: 1 }] } },
    });
    expect(await customerCount()).toBe(20);
    expect(await test.must('imports.listWorks', {})).toEqual([]);
  });

  it('is stopped in the middle of its rows, and fails in the middle of them, without a trace', async () => {
    const works = createListWorks();
    const open = (): LongWrite =>
      openLongWrite(storePath(test.folder), { actorId: office.ownerId, now: test.now() }, { foundRows: 1000 });
    function* endless({ writer }: LongWrite): Generator<ListStep, ListResult> {
      for (let done = 1; ; done += 1) {
        writer.insert(parties, { kind: 'person', name: `Endless ${done}`, searchText: 'endless' });
        yield { doing: 'rows', done, of: 1_000_000_000 };
      }
    }
    const before = test.snapshot();
    const never = () => {
      throw new Error('neither kept nor failed');
    };
    works.start({ workId: 'endless', long: open(), work: endless, onEnd: never });
    for (let done = 0; done < 50; ) {
      const progress = await works.follow('endless', 20);
      if (progress?.isDone !== false) throw new Error('it has no end');
      done = progress.step?.done ?? 0;
    }
    expect(works.stop('endless')).toBe(true);
    expect(await works.follow('endless', 20)).toBeUndefined();
    expect(test.snapshot()).toBe(before);
    const ends: boolean[] = [];
    works.start({
      workId: 'failing',
      long: open(),
      *work(long) {
        const rows = endless(long);
        for (let count = 0; count < 50; count += 1) yield rows.next().value as ListStep;
        throw new Error('the disk is full');
      },
      onEnd: (isKept) => ends.push(isKept),
    });
    const followed = async (): Promise<unknown> => {
      for (;;) await works.follow('failing', 20);
    };
    await expect(followed()).rejects.toThrow('the disk is full');
    expect(ends).toEqual([false]);
    expect(test.snapshot()).toBe(before);
    // The store takes writes again.
    await takeIn(test, await looked(20));
  });
});
