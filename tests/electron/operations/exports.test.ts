/** Giving everything out while work goes on: one moment of the store, in steps, and nothing left when it is stopped. */
import { createHash } from 'node:crypto';
import { existsSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { unzipSync } from 'fflate';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openExportSnapshot } from '../../../db/exports.ts';
import { storePath } from '../../../db/openStore.ts';
import { type ExportStep, writeExport } from '../../../electron/operations/exports/exportFiles.ts';
import { ASIDE_FOLDER, createExportRuns } from '../../../electron/operations/exports/exportRuns.ts';
import { makeExport } from '../../support/makeExport.ts';
import { type Office, setUpOffice } from '../../support/officeScenario.ts';
import { stripedPng } from '../../support/stripedPng.ts';
import { openTestCore, type TestCore } from '../../support/testCore.ts';

const NOW = '2026-03-02T13:00:00.000Z';
const STRIPES = [
  [20, 40, 60],
  [200, 180, 160],
] as const;
const NOTHING_MORE = { withFiles: false, withLog: false };

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
  const order = (path: string) => ({
    storePath: path,
    now: NOW,
    choice: NOTHING_MORE,
    readFile: () => null,
    asideFolder: `${test.folder}/aside`,
  });
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
    const first = runs.start(order(path));
    const inTheMiddle = runs.goOn(first.exportId, 10_000);
    const second = runs.start(order(path));
    expect(await inTheMiddle).toBeUndefined();
    expect(await runs.goOn(first.exportId, 1)).toBeUndefined();
    const done = await runs.goOn(second.exportId, 10_000);
    if (done?.isDone !== true) throw new Error('not done');
    // Whoever could not keep it asks again; once it was taken, nothing stays.
    expect(await runs.goOn(second.exportId, 1)).toMatchObject({ isDone: true });
    expect([...done.takeFileZips()]).toEqual([]);
    expect(await runs.goOn(second.exportId, 1)).toBeUndefined();
  });

  it('lets go of one that nobody asks on', async () => {
    const runs = createExportRuns(10);
    const { exportId } = runs.start(order(storePath(test.folder)));
    await new Promise((resolve) => setTimeout(resolve, 60));
    expect(await runs.goOn(exportId, 1)).toBeUndefined();
  });

  it('says how far it is: tables and rows only grow, and come to their end', async () => {
    const snapshot = openExportSnapshot(storePath(test.folder), NOTHING_MORE);
    const steps: ExportStep[] = [];
    for await (const step of {
      [Symbol.asyncIterator]: () => writeExport(snapshot, NOW, { read: () => null, keep: () => {} }),
    })
      steps.push(step);
    snapshot.close();
    const grows = (pick: (step: ExportStep) => number) =>
      steps.every((step, index) => index === 0 || pick(step) >= pick(steps[index - 1] ?? step));
    expect(grows(({ rowsDone }) => rowsDone) && grows(({ tablesDone }) => tablesDone)).toBe(true);
    expect(steps[0]).toMatchObject({ writing: 'customers-and-appliances', tablesDone: 1 });
    const last = steps.at(-1);
    expect([last?.tablesDone, last?.rowsDone]).toEqual([last?.tableCount, last?.rowCount]);
  });

  it('gives photos by their hash with what each belongs to, as many ZIPs as they fill, and says what is missing', async () => {
    const pngs = [8, 16, 24].map((width) => stripedPng(width, 8, 4, STRIPES));
    const ids: string[] = [];
    for (const [index, bytes] of pngs.entries()) {
      const file = { bytes, mediaType: 'image/png', fileName: `plate-${index}.png`, takenAt: null };
      const reply = await test.core.putFile(file, 'test-window');
      if (!reply.ok) throw new Error(reply.code);
      ids.push(reply.attachmentId);
    }
    const hashes = pngs.map((bytes) => createHash('sha256').update(bytes).digest('hex'));
    const raw = new Database(storePath(test.folder));
    raw
      .prepare(
        "INSERT INTO attachment_links (id, attachment_id, entity, entity_id, item_key) VALUES (?, ?, 'runs', 'r1', 'plate')",
      )
      .run('link-1', ids[0]);
    raw.close();
    rmSync(join(test.folder, 'attachments', (hashes[2] ?? '').slice(0, 2), hashes[2] ?? ''));
    const made = await makeExport(test, { withFiles: true });
    expect(made.missingCount).toBe(1);
    const list = new TextDecoder().decode((await entriesOf(made.attachmentId))['files-belong-to.csv']);
    const lines = list.split('\r\n').filter((line) => line.includes('plate-'));
    expect(lines).toHaveLength(3);
    expect(lines[0]).toContain(`${hashes[0]},${ids[0]},plate-0.png`);
    expect(lines[0]).toMatch(/,runs,r1,plate$/);
    const given = Object.assign(
      {},
      ...(await Promise.all(made.fileZips.map(({ attachmentId }) => entriesOf(attachmentId)))),
    );
    expect(Buffer.from(given[`files/${hashes[0]}.png`])).toEqual(Buffer.from(pngs[0] ?? []));
    expect(Buffer.from(given[`files/${hashes[1]}.png`])).toEqual(Buffer.from(pngs[1] ?? []));
    expect(Object.keys(given)).not.toContain(`files/${hashes[2]}.png`);
    expect(made.fileCount).toBe(Object.keys(given).length);
    expect(existsSync(join(test.folder, ASIDE_FOLDER))).toBe(false);
    // What was given out before is not given out again.
    expect((await makeExport(test, { withFiles: true })).fileCount).toBe(made.fileCount);
  });

  it('fills one ZIP of files after the other, and leaves none aside when it is stopped', async () => {
    const readFile = (sha256: string) => new TextEncoder().encode(sha256);
    const bytes = stripedPng(32, 8, 4, STRIPES);
    await test.core.putFile({ bytes, mediaType: 'image/png', fileName: 'flue.png', takenAt: null }, 'test-window');
    const runs = createExportRuns();
    const choice = { withFiles: true, withLog: false };
    const small = { ...order(storePath(test.folder)), choice, readFile, zipBytes: 64 };
    const first = runs.start(small);
    const done = await runs.goOn(first.exportId, 10_000);
    if (done?.isDone !== true) throw new Error('not done');
    // 64 letters each: one file a ZIP.
    expect([...done.takeFileZips()]).toHaveLength(done.files.fileCount);
    const second = runs.start(small);
    await runs.goOn(second.exportId, 10_000);
    expect(existsSync(small.asideFolder)).toBe(true);
    runs.stop(second.exportId);
    expect(existsSync(small.asideFolder)).toBe(false);
  });

  it('gives the change log out only where it is asked for, and no PIN with it', async () => {
    const tablesOf = async (withLog: boolean) => {
      const { attachmentId } = await makeExport(test, { withLog });
      const text = new TextDecoder().decode((await entriesOf(attachmentId))['everything.json']);
      return (JSON.parse(text) as { tables: Record<string, { entity: string; fields: object }[]> }).tables;
    };
    expect(Object.keys(await tablesOf(false))).not.toContain('op');
    const { op = [] } = await tablesOf(true);
    const staffOps = op.filter(({ entity }) => entity === 'staff');
    expect(staffOps.length).toBeGreaterThan(0);
    expect(JSON.stringify(staffOps)).toContain('Maren Oduya');
    expect(JSON.stringify(op)).not.toMatch(/pinHash|scrypt/);
  });
});
