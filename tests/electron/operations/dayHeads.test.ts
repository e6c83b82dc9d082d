import Database from 'better-sqlite3';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { storePath } from '../../../db/openStore.ts';
import { hasIntactChains } from '../../../electron/operations/sealChains.ts';
import { type Office, PIN, setUpHouse, setUpOffice } from '../../support/officeScenario.ts';
import { readPdf } from '../../support/readPdf.ts';
import { openTestCore, type TestCore } from '../../support/testCore.ts';
import { bookAndBegin, readStartupNotes, walkRun } from '../../support/wholeJob.ts';

const DAY_S = 86_400;

describe('the head of each day', () => {
  let test: TestCore;
  let office: Office;
  let raw: Database.Database;
  const visits: string[] = [];

  const seal = async () => {
    const serial = `TK30000${visits.length}`;
    await test.must('session.signIn', { staffId: office.ownerId, pin: PIN });
    const house = await setUpHouse(test, { appliance: { serial } }, office.customerId);
    const notes = readStartupNotes();
    const at = await bookAndBegin(test, { ...office, ...house });
    await walkRun(test, office, at, { ...notes, answers: { ...notes.answers, serial } });
    await test.must('visits.finish', { visitId: at.visitId, outcome: 'finished', reason: null, labourMin: 90 });
    await test.must('visits.seal', { visitId: at.visitId, runId: at.runId });
    visits.push(at.visitId);
  };
  const heads = () =>
    raw.prepare('SELECT day, seal_count AS count FROM day_heads ORDER BY rowid').all() as {
      day: string;
      count: number;
    }[];
  const brokenDays = async () =>
    (await test.must('records.verify', { visitId: visits.at(-1) ?? expect.unreachable() })).brokenDays;
  beforeAll(async () => {
    test = openTestCore();
    office = await setUpOffice(test);
    raw = new Database(storePath(test.folder));
    await seal();
    await seal();
    test.wait(DAY_S);
    await seal();
    await test.must('session.signIn', { staffId: office.ownerId, pin: PIN });
  }, 120_000);
  afterAll(() => {
    raw.close();
    test.remove();
  });

  it('counts what was sealed on a day once the next one seals something', async () => {
    const [first] = heads();
    expect(heads()).toHaveLength(1);
    expect(first?.count).toBe(2);
    expect(await brokenDays()).toEqual([]);
    expect(hasIntactChains(raw)).toBe(true);
  });

  it('stands on the packet of the next day', async () => {
    const runs = raw.prepare('SELECT run_id FROM seals ORDER BY rowid').pluck().all() as string[];
    const { packetPdfId } = await test.must('packets.build', {
      runId: runs.at(-1) ?? expect.unreachable(),
      isDraft: false,
      gapReason: 'test',
    });
    const file = await test.core.getFile(packetPdfId, 'test-window');
    const [head] = raw.prepare('SELECT day, sha256 FROM day_heads').all() as { day: string; sha256: string }[];
    const { pages } = await readPdf(file?.bytes ?? expect.unreachable());
    const text = pages.join(' ').replaceAll(/\s+/g, ' ');
    expect(text).toContain(`up to ${head?.day} (UTC) has the fingerprint ${head?.sha256.slice(0, 8)}`);
  });

  it('shows that a whole visit was taken away, where each chain that is left is whole', async () => {
    const day = heads()[0]?.day;
    const rows = raw.prepare('SELECT * FROM seals WHERE visit_id = ?').all(visits[0]) as Record<string, unknown>[];
    // As somebody with another program would.
    raw.pragma('foreign_keys = OFF');
    raw.exec(`DELETE FROM seal_disclosures WHERE seal_id IN (SELECT id FROM seals WHERE visit_id = '${visits[0]}')`);
    raw.exec(`DELETE FROM seals WHERE visit_id = '${visits[0]}'`);
    expect(await brokenDays()).toEqual([day]);
    const verified = await test.must('records.verify', { visitId: visits[1] ?? expect.unreachable() });
    expect(verified.isIntact).toBe(true);
    expect(hasIntactChains(raw)).toBe(false);
    expect(await test.ask('backups.make', {})).toMatchObject({
      error: { code: 'copy-failed', data: { why: 'seal-chain' } },
    });
    // Put in again later it is as wrong as gone: it stands in another place.
    const [row] = rows;
    if (row === undefined) return expect.unreachable();
    const names = Object.keys(row);
    raw
      .prepare(`INSERT INTO seals (${names.join()}) VALUES (${names.map(() => '?').join()})`)
      .run(...Object.values(row));
    expect(await brokenDays()).toEqual([day]);
  });
});
