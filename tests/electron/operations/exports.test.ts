/** Giving everything out while work goes on: one moment of the store, in steps, and nothing left when it is stopped. */
import Database from 'better-sqlite3';
import { unzipSync } from 'fflate';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openExportSnapshot } from '../../../db/exports.ts';
import { storePath } from '../../../db/openStore.ts';
import { type ExportStep, writeExport } from '../../../electron/operations/exports/exportFiles.ts';
import { createExportRuns } from '../../../electron/operations/exports/exportRuns.ts';
import { makeExport } from '../../support/makeExport.ts';
import { type Office, setUpOffice } from '../../support/officeScenario.ts';
import { openTestCore, type TestCore } from '../../support/testCore.ts';

const NOW = '2026-03-02T13:00:00.000Z';

describe('giving everything out', () => {
  let test: TestCore;
  let office: Office;
  beforeAll(async () => {
    test = openTestCore();
    office = await setUpOffice(test);
  });
  afterAll(() => test.remove());

  const rename = async (name: string): Promise<void> => {
    const { party } = await test.must('customers.get', { customerId: office.customerId });
    const { partyId: _partyId, phoneE164: _phone, ...fields } = party;
    await test.must('customers.update', {
      customerId: office.customerId,
      party: { ...fields, name },
      note: null,
    });
  };
  const entriesOf = async (attachmentId: string) =>
    unzipSync((await test.core.getFile(attachmentId, 'test-window'))?.bytes ?? new Uint8Array());

  it('holds every row with its type, as plain SQL finds them', async () => {
    const { attachmentId } = await makeExport(test);
    const entries = await entriesOf(attachmentId);
    const { tables } = JSON.parse(new TextDecoder().decode(entries['everything.json'])) as {
      tables: Record<string, Record<string, unknown>[]>;
    };
    const raw = new Database(storePath(test.folder), { readonly: true });
    for (const [name, rows] of Object.entries(tables)) {
      // The file itself is kept after the moment it shows.
      const kept = raw.prepare(`SELECT * FROM "${name}"`).all() as Record<string, unknown>[];
      expect(rows.length, name).toBe(kept.length - (name === 'attachments' ? 1 : 0));
      const texts = (row: Record<string, unknown>) => Object.values(row).filter((value) => typeof value === 'string');
      for (const [index, row] of rows.entries())
        expect(texts(kept[index] ?? {})).toEqual(expect.arrayContaining(texts(row)));
    }
    raw.close();
    expect(tables['sheet_revisions']?.[0]?.['body']).toMatchObject({ startup: expect.any(Array) });
    expect(tables['jobs']?.every((row) => typeof row['is_chargeable'] === 'boolean')).toBe(true);
  });

  it('shows the store as it was at the beginning, whatever is written meanwhile', async () => {
    const { exportId } = await test.must('exports.start', {});
    await rename('Somebody Else');
    let progress = await test.must('exports.goOn', { exportId });
    while (!progress.isDone) progress = await test.must('exports.goOn', { exportId });
    const entries = await entriesOf(progress.attachmentId);
    expect(new TextDecoder().decode(entries['tables/parties.csv'])).not.toContain('Somebody Else');
    const later = await makeExport(test);
    expect(new TextDecoder().decode((await entriesOf(later.attachmentId))['tables/parties.csv'])).toContain(
      'Somebody Else',
    );
  });

  it('keeps nothing of one that is stopped, and begins anew', async () => {
    const before = test.snapshot();
    const { exportId } = await test.must('exports.start', {});
    await test.must('exports.stop', { exportId });
    expect(await test.ask('exports.goOn', { exportId })).toMatchObject({ error: { code: 'export-stopped' } });
    expect(test.snapshot()).toBe(before);
    await rename('Still Writable');
    expect((await makeExport(test)).files.length).toBeGreaterThan(20);
  });

  it('can be stopped in the middle of a piece, and a second one ends the first', async () => {
    const runs = createExportRuns();
    const path = storePath(test.folder);
    const first = runs.start(path, NOW);
    const inTheMiddle = runs.goOn(first.exportId, 10_000);
    const second = runs.start(path, NOW);
    expect(await inTheMiddle).toBeUndefined();
    expect(await runs.goOn(first.exportId, 1)).toBeUndefined();
    expect(await runs.goOn(second.exportId, 10_000)).toMatchObject({ isDone: true });
    expect(await runs.goOn(second.exportId, 1)).toBeUndefined();
  });

  it('lets go of one that nobody asks on', async () => {
    const runs = createExportRuns(10);
    const { exportId } = runs.start(storePath(test.folder), NOW);
    await new Promise((resolve) => setTimeout(resolve, 60));
    expect(await runs.goOn(exportId, 1)).toBeUndefined();
  });

  it('says how far it is: tables and rows only grow, and come to their end', async () => {
    const snapshot = openExportSnapshot(storePath(test.folder));
    const steps: ExportStep[] = [];
    for await (const step of { [Symbol.asyncIterator]: () => writeExport(snapshot, NOW) }) steps.push(step);
    snapshot.close();
    const grows = (pick: (step: ExportStep) => number) =>
      steps.every((step, index) => index === 0 || pick(step) >= pick(steps[index - 1] ?? step));
    expect(grows(({ rowsDone }) => rowsDone) && grows(({ tablesDone }) => tablesDone)).toBe(true);
    expect(steps[0]).toMatchObject({ writing: 'customers-and-appliances', tablesDone: 1 });
    const last = steps.at(-1);
    expect([last?.tablesDone, last?.rowsDone]).toEqual([last?.tableCount, last?.rowCount]);
  });
});
