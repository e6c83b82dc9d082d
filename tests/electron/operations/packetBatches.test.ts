/** Packets in bulk: what fails says why and holds nobody up; a stop or a kill loses nothing and builds nothing twice. */
import Database from 'better-sqlite3';
import { unzipSync } from 'fflate';
import Papa from 'papaparse';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { storePath } from '../../../db/openStore.ts';
import type { PacketBatch } from '../../../electron/contract/packetBatches.ts';
import { type Office, PIN, setUpOffice } from '../../support/officeScenario.ts';
import { openTestCore, type TestCore } from '../../support/testCore.ts';
import { bookAndBegin } from '../../support/wholeJob.ts';

const SIGNED_IN_WINDOW = 'test-window';

describe('packets in bulk', () => {
  let test: TestCore;
  let office: Office;
  /** Of startups begun at three boilers of one house. */
  const runIds: string[] = [];
  beforeAll(async () => {
    test = openTestCore();
    office = await setUpOffice(test);
    const { appliance } = await test.must('appliances.get', { applianceId: office.applianceId });
    for (const serial of ['TK700', 'TK701', 'TK702']) {
      await asOwner();
      const { applianceId } = await test.must('appliances.create', {
        siteId: office.siteId,
        appliance: { ...appliance, serial },
        position: null,
        dates: [{ kind: 'installed', on: '2026-02-26', precision: 'day', source: 'fitter' }],
      });
      runIds.push((await bookAndBegin(test, { ...office, applianceId })).runId);
    }
    await asOwner();
  });
  afterAll(() => test.remove());

  const asOwner = () => test.must('session.signIn', { staffId: office.ownerId, pin: PIN });

  async function work(batchId: string): Promise<PacketBatch> {
    for (;;) {
      const batch = await test.must('packetBatches.goOn', { batchId });
      if (batch.waiting === 0) return batch;
    }
  }

  async function filesOf(batchId: string, what: 'pages' | 'whole'): Promise<Record<string, Uint8Array>> {
    const { attachmentId } = await test.must('packetBatches.save', { batchId, what });
    const file = await test.core.getFile(attachmentId, SIGNED_IN_WINDOW);
    return unzipSync(file?.bytes ?? new Uint8Array());
  }

  it('names for each one why it could not be built, and tries it again once that is put right', async () => {
    const [unsealed = '', withGaps = ''] = runIds;
    changeRows(test, `UPDATE runs SET sealed_at = '2026-03-02T12:00:00.000Z' WHERE id = '${withGaps}'`);
    const { gaps } = await test.must('packets.check', { runId: withGaps });
    expect(gaps.length).toBeGreaterThan(0);
    const { batchId } = await test.must('packetBatches.start', { runIds: [unsealed, withGaps], isDraft: false });
    expect(await work(batchId)).toMatchObject({ total: 2, built: 0, failed: 2, waiting: 0 });
    const { items } = await test.must('packetBatches.get', { batchId, show: 'failed' });
    expect(items).toMatchObject([
      { serial: 'TK700', state: 'failed', why: 'not-sealed', gapCount: null },
      { serial: 'TK701', state: 'failed', why: 'gaps-open', gapCount: gaps.length },
    ]);
    await test.must('packetBatches.resume', { batchId, withFailed: true });
    expect(await test.must('packetBatches.get', { batchId })).toMatchObject({
      batch: { waiting: 2, failed: 0 },
      items: [
        { state: 'waiting', why: null, gapCount: null },
        { state: 'waiting', why: null, gapCount: null },
      ],
    });
    changeRows(test, `UPDATE runs SET sealed_at = NULL WHERE id = '${withGaps}'`);
  });

  it('gives the packets and the table of what became of each as one ZIP', async () => {
    const { batchId } = await test.must('packetBatches.start', { runIds: runIds.slice(0, 2), isDraft: true });
    expect(await test.ask('packetBatches.save', { batchId, what: 'pages' })).toMatchObject({
      ok: false,
      error: { code: 'nothing-built' },
    });
    expect(await work(batchId)).toMatchObject({ built: 2, failed: 0 });
    const pages = await filesOf(batchId, 'pages');
    expect(Object.keys(pages).sort()).toEqual(['packet-TK700.pdf', 'packet-TK701.pdf', 'what-became-of-each.csv']);
    expect(new TextDecoder('latin1').decode(pages['packet-TK700.pdf']?.slice(0, 5))).toBe('%PDF-');
    const { data } = Papa.parse<Record<string, string>>(new TextDecoder().decode(pages['what-became-of-each.csv']), {
      header: true,
      skipEmptyLines: true,
    });
    expect(data).toMatchObject([
      { serial: 'TK700', state: 'built', why: '' },
      { serial: 'TK701', state: 'built', why: '' },
    ]);
    const whole = await filesOf(batchId, 'whole');
    expect(Object.keys(unzipSync(whole['packet-TK701.zip'] ?? new Uint8Array()))).toContain('record.json');
  });

  it('stops, survives a restart and goes on with what waits, building nothing twice', async () => {
    const { batchId } = await test.must('packetBatches.start', { runIds: [...runIds, ...runIds], isDraft: true });
    // What a kill leaves: the first one built, the others waiting.
    await work(batchId);
    changeRows(test, "UPDATE packet_batch_items SET state = 'waiting', packet_pdf_id = NULL WHERE position > 0");
    await test.must('packetBatches.stop', { batchId });
    expect(await test.ask('packetBatches.goOn', { batchId })).toMatchObject({
      ok: false,
      error: { code: 'batch-stopped' },
    });
    test.restart();
    await asOwner();
    expect(await test.must('packetBatches.list', {})).toContainEqual(
      expect.objectContaining({ batchId, total: 3, built: 1, waiting: 2 }),
    );
    const [first] = (await test.must('packetBatches.get', { batchId })).items;
    await test.must('packetBatches.resume', { batchId, withFailed: false });
    expect(await work(batchId)).toMatchObject({ built: 3, failed: 0, cancelledAt: null });
    expect((await test.must('packetBatches.get', { batchId })).items[0]?.packetPdfId).toBe(first?.packetPdfId);
  });

  it('lets a second window look on while one builds', async () => {
    const before = countIssued(test);
    const { batchId } = await test.must('packetBatches.start', { runIds: runIds.slice(0, 2), isDraft: true });
    await Promise.all([work(batchId), work(batchId)]);
    expect(countIssued(test) - before).toBe(2);
  });

  it('refuses a run that is not there before anything is written', async () => {
    const before = test.snapshot();
    expect(
      await test.ask('packetBatches.start', { runIds: ['018f0000-0000-7000-8000-000000000000'], isDraft: true }),
    ).toMatchObject({ ok: false, error: { code: 'not-found' } });
    expect(test.snapshot()).toBe(before);
  });
});

function countIssued(test: TestCore): number {
  const raw = new Database(storePath(test.folder), { readonly: true });
  const count = raw.prepare("SELECT count(*) FROM issued_documents WHERE kind = 'packet-pdf'").pluck().get() as number;
  raw.close();
  return count;
}

function changeRows(test: TestCore, sql: string): void {
  const raw = new Database(storePath(test.folder));
  raw.exec(sql);
  raw.close();
}
