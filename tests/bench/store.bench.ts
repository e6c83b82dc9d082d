/** Saving a field against a bare durable commit, a list through the contract against bare SQL, and judging a whole visit. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { storePath } from '../../db/openStore.ts';
import { setPragmas } from '../../db/setPragmas.ts';
import { judgeRun } from '../../domain/judgement/judgeRun.ts';
import { setUpOffice } from '../support/officeScenario.ts';
import { openTestCore, type TestCore } from '../support/testCore.ts';
import { bookAndBegin, readStartupNotes, walkRun } from '../support/wholeJob.ts';
import { type BenchResult, medianMs, medianPair } from './benchResult.ts';

export async function benchStore(): Promise<readonly BenchResult[]> {
  const test = openTestCore();
  try {
    const office = await setUpOffice(test);
    const run = await bookAndBegin(test, office);
    await walkRun(test, office, run, readStartupNotes());
    return [...(await saveFields(test, run, office.analyserId)), await list(test), await judge(test, run)];
  } finally {
    test.remove();
  }
}

/** A field filled for the first time, and one typed over: that marks the reading that stood there before. */
async function saveFields(
  test: TestCore,
  run: { readonly visitId: string; readonly runId: string },
  instrumentId: string,
): Promise<readonly BenchResult[]> {
  const folder = mkdtempSync(join(tmpdir(), 'lightoff-bench-'));
  const raw = new Database(join(folder, 'bare.db'));
  setPragmas(raw);
  raw.exec(
    'CREATE TABLE reading (id INTEGER PRIMARY KEY, typed TEXT NOT NULL, value REAL NOT NULL, replaced_by INTEGER) STRICT',
  );
  const insert = raw.prepare('INSERT INTO reading (typed, value) VALUES (?, ?)');
  const mark = raw.prepare('UPDATE reading SET replaced_by = ? WHERE id = ?');
  let count = 0;
  const save = (sample: number) => {
    count += 1;
    return test.must('visits.recordReading', {
      visitId: run.visitId,
      runId: run.runId,
      stepKey: 'fill',
      itemKey: 'cold-pressure',
      quantity: 'systemPressureBarG',
      sample,
      typedText: (1 + (count % 40) / 100).toFixed(2),
      typedUnit: 'bar',
      notMeasuredReason: null,
      instrumentId,
      measuredById: null,
    });
  };
  const bare = () => insert.run('1.31', 1.31);
  // The least that keeps what stood there: a row, and a mark on the one before.
  const bareOver = raw.transaction(() => {
    const { lastInsertRowid } = insert.run('1.31', 1.31);
    mark.run(lastInsertRowid, Number(lastInsertRowid) - SAVES);
  });
  const fill = inTurn(save);
  const typeOver = inTurn(save);
  const filled = await medianPair(SAVES, fill, bare);
  const typedOver = await medianPair(2 * SAVES, typeOver, bareOver);
  raw.close();
  rmSync(folder, { recursive: true });
  return [
    { name: 'save a field, against a bare FULL commit', ...filled, goal: 2 },
    { name: 'type a field over, against a bare FULL commit of row and mark', ...typedOver, goal: 2 },
  ];
}

/** As many samples as an item takes. */
const SAVES = 98;

/** The samples one after the other, past the first, which the walk has filled. */
function inTurn(save: (sample: number) => unknown): () => unknown {
  let calls = 0;
  return () => {
    const sample = 2 + (calls % SAVES);
    calls += 1;
    return save(sample);
  };
}

async function list(test: TestCore): Promise<BenchResult> {
  await fillCustomers(test, 400);
  const raw = new Database(storePath(test.folder), { readonly: true });
  const query = raw.prepare(`
    SELECT c.id, p.name, p.phone_typed, p.city,
      (SELECT count(*) FROM sites WHERE customer_id = c.id),
      (SELECT count(*) FROM placements pl JOIN sites s ON s.id = pl.site_id WHERE s.customer_id = c.id AND pl.to_on IS NULL),
      (SELECT count(*) FROM make_safes m JOIN sites s ON s.id = m.site_id WHERE s.customer_id = c.id AND m.closed_at IS NULL)
    FROM customers c JOIN parties p ON p.id = c.party_id ORDER BY p.name, c.id LIMIT 50`);
  const pair = await medianPair(
    200,
    () => test.must('customers.list', { limit: 50 }),
    () => query.all(),
  );
  raw.close();
  return { name: '50 customers through the contract, against bare prepared SQL', ...pair, goal: 5 };
}

async function fillCustomers(test: TestCore, count: number): Promise<void> {
  for (let index = 0; index < count; index += 1) {
    await test.must('customers.create', {
      party: {
        kind: 'person',
        name: `Customer ${String(index).padStart(4, '0')}`,
        contactName: null,
        language: null,
        email: null,
        phoneTyped: null,
        street: null,
        postcode: null,
        city: 'Graven Bay',
        region: null,
        country: null,
        note: null,
      },
      note: null,
      isKnownNew: true,
    });
  }
}

async function judge(test: TestCore, run: { readonly visitId: string; readonly runId: string }): Promise<BenchResult> {
  const { record, sheet } = await test.must('visits.getRun', { visitId: run.visitId, runId: run.runId });
  const ms = await medianMs(50, () => judgeRun({ record, sheet }));
  // What was replaced is passed over and costs next to nothing.
  const count = record.readings.filter(({ supersededById }) => supersededById === null).length;
  return {
    name: `judge a full visit, per ${JUDGED_READINGS} readings (of ${count}), ms`,
    ms: (ms * JUDGED_READINGS) / count,
    rawMs: null,
    goal: 5,
  };
}

/** What the goal counts as a full visit. */
const JUDGED_READINGS = 60;
