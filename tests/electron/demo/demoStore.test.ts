/** The demo: every kind of finding is somewhere in its three years, and no list of it is empty. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openStore, type Store, storePath } from '../../../db/openStore.ts';
import { type Finding, VERDICTS } from '../../../domain/judgement/finding.ts';
import { BLOCKS } from '../../../domain/procedure/modelSheet.ts';
import { buildDemoStore } from '../../../electron/demo/demoStore.ts';
import { readRunState } from '../../../electron/operations/runState.ts';
import { APP_ROOT } from '../../support/testCore.ts';

const NOW = '2026-05-12T14:00:00.000Z';
const migrationsFolder = join(APP_ROOT, 'db/migrations');
let parent: string;
let store: Store;
let findings: readonly Finding[];

beforeAll(() => {
  parent = mkdtempSync(join(tmpdir(), 'lightoff-demo-'));
  const folder = join(parent, 'demo');
  buildDemoStore({ folder, appRoot: APP_ROOT, migrationsFolder, now: NOW });
  store = openStore({ path: storePath(folder), purpose: 'demo', migrationsFolder, now: NOW });
  const runs = store.raw
    .prepare(
      'SELECT runs.id AS runId, min(visit_jobs.visit_id) AS visitId FROM runs JOIN visit_jobs ON visit_jobs.job_id = runs.job_id GROUP BY runs.id',
    )
    .all() as { runId: string; visitId: string }[];
  findings = runs.flatMap(({ runId, visitId }) => readRunState(store.db, runId, visitId, NOW).findings);
}, 240_000);

afterAll(() => {
  store?.close();
  rmSync(parent, { recursive: true, force: true });
});

describe('the demo', () => {
  it('has every verdict', () => {
    expect([...new Set(findings.map(({ verdict }) => verdict))].sort()).toEqual([...VERDICTS].sort());
  });

  it('has findings that are proven and not proven, and everything a finding can block', () => {
    expect(new Set(findings.map(({ proof }) => proof.proven))).toEqual(new Set([true, false]));
    expect([...new Set(findings.flatMap(({ blocks }) => blocks))].sort()).toEqual([...BLOCKS].sort());
  });

  it.each([
    'customers',
    'sites',
    'appliances',
    'visits',
    'runs',
    'readings',
    'attachments',
    'registrations',
    'make_safes',
    'permits',
    'gas_supplies',
    'licences',
    'trainings',
    'calibrations',
    'consents',
    'seals',
    'readiness_answers',
  ])('has rows in %s', (table) => {
    expect(store.raw.prepare(`SELECT count(*) FROM "${table}"`).pluck().get()).toBeGreaterThan(0);
  });
});
