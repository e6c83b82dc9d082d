/**
 * 100 000 appliances: what falls due, worked out anew; one appliance's after a write; the first page of each list; and
 * search at every key. Beside each the same in bare SQL: no sheet, no derivation, no names, only the dates or the ids.
 */
import { performance } from 'node:perf_hooks';
import Database from 'better-sqlite3';
import { rebuildAllDues, rebuildDuesAfter } from '../../db/dues/refreshDues.ts';
import { watchDues } from '../../db/dues/watchDues.ts';
import { dropSearchCaches, ensureSearchCaches } from '../../db/finds/searchCaches.ts';
import { storePath } from '../../db/openStore.ts';
import { setPragmas } from '../../db/setPragmas.ts';
import { fillAppliances, importMakersSheets } from '../support/manyAppliances.ts';
import { setUpOffice } from '../support/officeScenario.ts';
import { openTestCore, type TestCore } from '../support/testCore.ts';
import { type BenchResult, medianMs, medianPair, p95Pair } from './benchResult.ts';
import { bareMatchOf, typedQueries } from './typedQueries.ts';

const APPLIANCES = 100_000;
/** Of the test store's clock. */
const NOW = '2026-03-02T13:00:00.000Z';

export async function benchDues(): Promise<readonly BenchResult[]> {
  const test = openTestCore();
  try {
    await setUpOffice(test);
    await importMakersSheets(test);
    const raw = new Database(storePath(test.folder));
    setPragmas(raw);
    // Filled at once afterwards, as opening a store does: half the time of row by row.
    dropSearchCaches(raw);
    fillAppliances(raw, APPLIANCES);
    const searchMs = timed(() => ensureSearchCaches(raw));
    watchDues(raw);
    const results = [...rebuild(raw)];
    raw.exec(BARE_TABLE);
    results.push(await oneAppliance(test), ...(await lists(test, raw)));
    results.push(
      {
        name: 'words of all appliances and customers made searchable anew, ms',
        ms: searchMs,
        rawMs: null,
        goal: 10_000,
      },
      ...(await searches(test, raw)),
    );
    raw.close();
    return results;
  } finally {
    test.remove();
  }
}

const BARE_TABLE = `
  CREATE TEMP TABLE bare (appliance_id TEXT PRIMARY KEY, registration_on TEXT, service_on TEXT);
  CREATE INDEX temp.bare_by_day ON bare (registration_on, appliance_id);
  INSERT INTO bare SELECT appliance_id, date(min(happened_on), '+30 days'), date(min(happened_on), '+12 months')
    FROM appliance_dates GROUP BY appliance_id`;

function rebuild(raw: Database.Database): readonly BenchResult[] {
  const bareMs = timed(() => raw.exec(BARE_TABLE));
  raw.exec('DROP TABLE bare');
  let steps = 0;
  const allMs = timed(() => rebuildAllDues(raw, NOW, () => (steps += 1)));
  const againMs = timed(() => {
    let after: string | null = null;
    do after = raw.transaction(() => rebuildDuesAfter(raw, NOW, after, 1000))();
    while (after !== null);
  });
  const rows = raw.prepare('SELECT count(*) FROM appliance_dues').pluck().get() as number;
  const beside = (ms: number): string => `bare SQL ${bareMs.toFixed(0)} ms, ratio ${(ms / bareMs).toFixed(1)}`;
  return [
    {
      name: `${rows} due rows of ${APPLIANCES} appliances from empty, ${steps} steps, ms (${beside(allMs)})`,
      ms: allMs,
      rawMs: null,
      goal: 4000,
    },
    { name: `the same checked again a step at a time, ms (${beside(againMs)})`, ms: againMs, rawMs: null, goal: 4000 },
  ];
}

function timed(work: () => unknown): number {
  const start = performance.now();
  work();
  return performance.now() - start;
}

async function oneAppliance(test: TestCore): Promise<BenchResult> {
  const { rows } = await test.must('appliances.list', { limit: 50 });
  let count = 0;
  const set = (): unknown => {
    count += 1;
    const applianceId = rows[count % rows.length]?.applianceId ?? '';
    const on = `2019-03-${String((count % 28) + 1).padStart(2, '0')}`;
    return test.must('appliances.setDate', {
      applianceId,
      date: { kind: 'occupied', on, precision: 'day', source: 'owner' },
    });
  };
  return {
    name: 'change one date of one appliance, its dues with it, ms',
    ms: await medianMs(60, set),
    rawMs: null,
    goal: 5,
  };
}

/** The first page as a screen asks for it, through the contract, against the bare dates by their own index. */
async function lists(test: TestCore, raw: Database.Database): Promise<readonly BenchResult[]> {
  const bare = raw.prepare('SELECT * FROM bare ORDER BY registration_on, appliance_id LIMIT 50');
  const jobId = raw.prepare('SELECT id FROM jobs ORDER BY id LIMIT 1').pluck().get() as string;
  const askings = [
    ['deadlines', () => test.must('deadlines.list', { limit: 50 })],
    ['weeks of deadlines', () => test.must('deadlines.get', {})],
    ['services due', () => test.must('serviceDue.list', { limit: 50 })],
    ['rounds', () => test.must('serviceDue.get', {})],
    ['reminders', () => test.must('reminders.list', { limit: 50 })],
    ['registrations', () => test.must('registrations.list', { limit: 50 })],
    ['registrations, confirmed ones too', () => test.must('registrations.list', { openOnly: false, limit: 50 })],
    ['jobs to book', () => test.must('jobs.list', {})],
    ['one job', () => test.must('jobs.list', { unplannedOnly: false, jobIds: [jobId] })],
    ['visits of a week', () => test.must('visits.list', { from: NOW.slice(0, 10), to: '2026-03-08' })],
  ] as const;
  const results: BenchResult[] = [];
  for (const [name, ask] of askings) {
    const { ms, rawMs } = await medianPair(15, ask, () => bare.all());
    const ratio = `bare SQL ${rawMs.toFixed(2)} ms, ratio ${(ms / rawMs).toFixed(0)}`;
    results.push({ name: `first page: ${name}, ms (${ratio})`, ms, rawMs: null, goal: 200 });
  }
  return results;
}

/** What a search box asks at each key, against the bare ids of the same full-text table. */
async function searches(test: TestCore, raw: Database.Database): Promise<readonly BenchResult[]> {
  const queries = typedQueries(APPLIANCES);
  const askings = [
    ['appliances', 'appliance_finds_text', (query: string) => test.must('appliances.list', { query })],
    ['callers', 'customer_finds_text', (query: string) => test.must('customers.list', { query, limit: 8 })],
  ] as const;
  const results: BenchResult[] = [];
  for (const [name, table, ask] of askings) {
    const bare = raw.prepare(`SELECT rowid FROM ${table} WHERE ${table} MATCH ? ORDER BY rowid LIMIT 50`).pluck();
    const { ms, rawMs } = await p95Pair(queries, ask, (query) => bare.all(bareMatchOf(query)));
    const ratio = `bare SQL ${rawMs.toFixed(2)} ms, ratio ${(ms / rawMs).toFixed(1)}`;
    results.push({
      name: `p95 of ${queries.length} keys typed in search: ${name}, ms (${ratio})`,
      ms,
      rawMs: null,
      goal: 30,
    });
  }
  return results;
}
