/**
 * What falls due at 100 000 appliances: everything worked out anew, one appliance's after a write, the first page of each
 * list. Beside each the same in bare SQL: no sheet, no derivation, no names, only the dates.
 */
import { performance } from 'node:perf_hooks';
import Database from 'better-sqlite3';
import { rebuildAllDues, rebuildDuesAfter } from '../../db/dues/refreshDues.ts';
import { watchDues } from '../../db/dues/watchDues.ts';
import { setPragmas, storePath } from '../../db/openStore.ts';
import { fillAppliances, importMakersSheets } from '../support/manyAppliances.ts';
import { setUpOffice } from '../support/officeScenario.ts';
import { openTestCore, type TestCore } from '../support/testCore.ts';
import { type BenchResult, medianMs, medianPair } from './benchResult.ts';

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
    fillAppliances(raw, APPLIANCES);
    watchDues(raw);
    const results = [...rebuild(raw)];
    raw.exec(BARE_TABLE);
    results.push(await oneAppliance(test), ...(await lists(test, raw)));
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
  const askings = [
    ['deadlines', () => test.must('deadlines.list', { limit: 50 })],
    ['weeks of deadlines', () => test.must('deadlines.get', {})],
    ['services due', () => test.must('serviceDue.list', { limit: 50 })],
    ['rounds', () => test.must('serviceDue.get', {})],
    ['reminders', () => test.must('reminders.list', { limit: 50 })],
  ] as const;
  const results: BenchResult[] = [];
  for (const [name, ask] of askings) {
    const { ms, rawMs } = await medianPair(15, ask, () => bare.all());
    const ratio = `bare SQL ${rawMs.toFixed(2)} ms, ratio ${(ms / rawMs).toFixed(0)}`;
    results.push({ name: `first page: ${name}, ms (${ratio})`, ms, rawMs: null, goal: 200 });
  }
  return results;
}
