/** The demo: every kind of finding is somewhere in its three years, and no list of it is empty. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openStore, type Store, storePath } from '../../../db/openStore.ts';
import { type Finding, VERDICTS } from '../../../domain/judgement/finding.ts';
import { canRead, instrumentKindFor } from '../../../domain/judgement/proof/instrumentKindFor.ts';
import { BLOCKS } from '../../../domain/procedure/modelSheet.ts';
import type { QuantityKey } from '../../../domain/quantity/quantities.ts';
import type { InstrumentKind } from '../../../domain/vocabulary/people.ts';
import type { InputOf, OperationName, OutputOf } from '../../../electron/contract/index.ts';
import type { Core } from '../../../electron/core.ts';
import { createCore } from '../../../electron/createCore.ts';
import { buildDemoStore, DEMO_PIN } from '../../../electron/demo/demoStore.ts';
import { type RunState, readRunState } from '../../../electron/operations/runState.ts';
import { takeOut } from '../../support/takeList.ts';
import { APP_ROOT, type TestCore } from '../../support/testCore.ts';

const NOW = '2026-05-12T14:00:00.000Z';
const migrationsFolder = join(APP_ROOT, 'db/migrations');
let parent: string;
let store: Store;
let states: readonly RunState[];
let findings: readonly Finding[];
let core: Core;

const ask: TestCore['ask'] = async (name, input) => (await core.call(name, input, 'test-window')) as never;
const must = async <N extends OperationName>(name: N, input: InputOf<N>): Promise<OutputOf<N>> => {
  const reply = await ask(name, input);
  if (reply.ok) return reply.value as never;
  throw new Error(`${name} → ${JSON.stringify(reply.error)}`);
};

beforeAll(async () => {
  parent = mkdtempSync(join(tmpdir(), 'lightoff-demo-'));
  const folder = join(parent, 'demo');
  buildDemoStore({ folder, appRoot: APP_ROOT, migrationsFolder, now: NOW });
  store = openStore({ path: storePath(folder), purpose: 'demo', migrationsFolder, now: NOW });
  const runs = store.raw
    .prepare(
      'SELECT runs.id AS runId, min(visit_jobs.visit_id) AS visitId FROM runs JOIN visit_jobs ON visit_jobs.job_id = runs.job_id GROUP BY runs.id',
    )
    .all() as { runId: string; visitId: string }[];
  states = runs.map(({ runId, visitId }) => readRunState(store.db, runId, visitId, NOW));
  findings = states.flatMap((state) => state.findings);
  core = createCore({
    dataFolder: parent,
    appRoot: APP_ROOT,
    clock: () => NOW,
    steadyClockMs: () => 0,
    startInDemo: true,
  });
  const { people } = await must('app.status', {});
  const owner = people.find(({ roles }) => roles.includes('owner'));
  await must('session.signIn', { staffId: owner?.staffId ?? '', pin: DEMO_PIN });
}, 240_000);

afterAll(() => {
  core?.close();
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
    'service_agreements',
    'claims',
    'recalls',
    'recall_outcomes',
    'messages',
    'message_events',
  ])('has rows in %s', (table) => {
    expect(store.raw.prepare(`SELECT count(*) FROM "${table}"`).pluck().get()).toBeGreaterThan(0);
  });

  it('has how the pressure was left wherever it was found too low, and nowhere else', () => {
    const LEFT = 'service-cold-pressure-left';
    const asked = states.filter(({ progress }) =>
      progress.steps.some(({ items }) => items.some(({ itemKey }) => itemKey === LEFT)),
    );
    const hasLeft = states.filter(({ record }) => record.readings.some(({ itemKey }) => itemKey === LEFT));
    expect(hasLeft.length).toBeGreaterThan(3);
    expect(asked.map(({ run }) => run.id).sort()).toEqual(hasLeft.map(({ run }) => run.id).sort());
  });

  it('has every reading with an instrument that can give it, and none with what a dial or the eye gives', () => {
    const rows = store.raw
      .prepare(
        `SELECT DISTINCT quantity, kind, accuracy, range_max AS rangeMax FROM readings
         LEFT JOIN instruments ON instruments.id = readings.instrument_id WHERE value_own IS NOT NULL`,
      )
      .all() as { quantity: QuantityKey; kind: InstrumentKind | null; accuracy: string; rangeMax: string }[];
    for (const { quantity, kind, accuracy, rangeMax } of rows) {
      if (kind === null) expect(instrumentKindFor(quantity), quantity).toBeNull();
      else
        expect(
          canRead({ kind, accuracy: JSON.parse(accuracy), rangeMax: JSON.parse(rangeMax) }, quantity),
          `${quantity} with the ${kind}`,
        ).toBe(true);
    }
    const kinds = new Set(rows.map(({ kind }) => kind));
    expect(kinds).toEqual(
      new Set(['analyser', 'manometer', 'thermometer', 'water-test', 'stopwatch', 'multimeter', null]),
    );
  });

  it('counts what its boilers burn among the loads of the meter', () => {
    // Of an earlier program's list nobody knows the meter.
    const uncounted = `SELECT count(*) FROM appliances
      WHERE id IN (SELECT p.appliance_id FROM placements p JOIN gas_supply_sites g ON g.site_id = p.site_id)
        AND id NOT IN (SELECT appliance_id FROM gas_loads WHERE appliance_id IS NOT NULL AND input_kw >= rated_input_kw)`;
    expect(store.raw.prepare(uncounted).pluck().get()).toBe(0);
  });

  it('has what every list of the owner’s shows', async () => {
    let deadlines = await must('deadlines.list', { show: 'open', limit: 200 });
    // A slow machine counts what is missing in several goes.
    while (deadlines.uncounted > 0) deadlines = await must('deadlines.list', { show: 'open', limit: 200 });
    expect(new Set(deadlines.rows.map(({ stage }) => stage))).toEqual(
      new Set(['not-begun', 'recording', 'ready', 'submitted']),
    );
    expect((await must('deadlines.list', { show: 'pressing' })).rows.length).toBeGreaterThan(0);
    expect((await must('registrations.list', { openOnly: false, limit: 200 })).rows.length).toBeGreaterThan(50);
    for (const kind of ['service', 'first-call', 'look-in'] as const)
      expect((await must('serviceDue.list', { kind })).rows.length, kind).toBeGreaterThan(0);
    expect((await must('serviceDue.get', {})).rounds.length).toBeGreaterThan(3);
    const reminders = await must('reminders.list', { onlyReachable: true, limit: 200 });
    expect(new Set(reminders.rows.flatMap(({ channels }) => channels))).toEqual(
      new Set(['e-mail', 'letter', 'phone', 'text']),
    );
    expect(
      (await must('messages.standing', { about: { kind: 'reminders' }, channel: 'letter' })).total,
    ).toBeGreaterThan(0);
  });

  it('writes to nobody about the service and, in a second letter, about how the same boiler is doing', async () => {
    const { keys } = await must('messages.standing', { about: { kind: 'reminders' }, channel: 'letter' });
    const kindsOf = Map.groupBy(keys, (key) => key.split(' ')[0]);
    expect([...kindsOf.values()].filter((ofOne) => ofOne.length > 1)).toEqual([]);
    expect(keys.some((key) => key.includes(' look-in '))).toBe(true);
    // Both stand for some: only the letter about the service goes out.
    const { rows } = await must('reminders.list', { kinds: ['first-call', 'look-in'], limit: 200 });
    const services = new Set(keys.filter((key) => key.includes(' service ')).map((key) => key.split(' ')[0]));
    expect(rows.some(({ applianceId }) => services.has(applianceId))).toBe(true);
  });

  it('has letters and e-mails prepared, sent, come back and answered, in the order of their days', async () => {
    const { rows } = await must('messages.list', { limit: 200 });
    expect(new Set(rows.flatMap(({ events }) => events.map(({ kind }) => kind)))).toEqual(
      new Set(['sent', 'bounced', 'answered']),
    );
    expect(rows.some(({ events }) => events.length === 0)).toBe(true);
    expect(new Set(rows.map(({ channel }) => channel))).toEqual(new Set(['letter', 'e-mail', 'text']));
    const days = rows.map(({ preparedAt }) => preparedAt);
    expect(days).toEqual(days.toSorted().reverse());
  });

  it('has a notice about boilers on file with letters gone out, claims granted, refused for labour and open, and agreements of every length', async () => {
    const [notice] = await must('recalls.list', {});
    expect(notice?.counts).toEqual({ affected: 5, doubtful: 0, open: 3, told: 2 });
    const claims = await must('claims.list', { applianceId: null, openOnly: false });
    expect(claims.map(({ outcome, claim }) => [outcome, claim.labourOutcome]).sort()).toEqual([
      ['granted', 'granted'],
      ['granted-in-part', 'refused'],
      ['open', null],
    ]);
    const services = await must('serviceDue.list', { limit: 200 });
    const agreed = services.rows.filter(({ demands }) => demands.length > 1);
    expect(agreed.some(({ sureness }) => sureness === 'agreement')).toBe(true);
    expect(agreed.some(({ sureness }) => sureness === 'maker-sheet')).toBe(true);
  });

  it('has consents by person, purpose and channel, each with its day and source, and a mind changed', () => {
    const rows = store.raw
      .prepare('SELECT purpose, channel, count(*) AS count, min(source) AS source FROM consents GROUP BY 1, 2')
      .all() as { purpose: string; channel: string; source: string }[];
    expect(new Set(rows.map(({ purpose }) => purpose)).size).toBe(5);
    expect(rows.every(({ source }) => source.length > 5)).toBe(true);
    const changed = `SELECT count(*) FROM consents a JOIN consents b
      ON a.party_id = b.party_id AND a.purpose = b.purpose AND a.channel = b.channel AND a.granted > b.granted
      WHERE b.given_on > a.given_on`;
    expect(store.raw.prepare(changed).pluck().get()).toBeGreaterThan(0);
    expect(store.raw.prepare('SELECT max(given_on) FROM consents').pluck().get()).toSatisfy(
      (on: string) => on < NOW.slice(0, 10),
    );
  });

  it('has packets asked for in one go, of which one cannot be built and says why', async () => {
    const [asked] = await must('packetBatches.list', {});
    let batch = asked;
    while (batch !== undefined && batch.waiting > 0)
      batch = await must('packetBatches.goOn', { batchId: batch.batchId });
    expect(batch).toMatchObject({ total: 3, built: 2, failed: 1, waiting: 0 });
    const { items } = await must('packetBatches.get', { batchId: batch?.batchId ?? '', show: 'failed' });
    expect(items).toMatchObject([{ why: 'gaps-open', packetPdfId: null }]);
    expect(items[0]?.gapCount).toBeGreaterThan(0);
  });

  it('has an earlier program’s list taken in, which can go out again, and one that three cells keep out', async () => {
    const [taken, ...others] = await must('imports.list', {});
    expect(taken).toMatchObject({ counts: { customers: 5, sites: 5, appliances: 5, services: 5 }, undoneAt: null });
    expect(others).toEqual([]);
    const [waiting, ...more] = await must('imports.listWaiting', {});
    expect(more).toEqual([]);
    const looked = await must('imports.check', { attachmentId: waiting?.attachmentId ?? '' });
    expect(looked.rowCount).toBe(5);
    expect(looked.issues.map(({ row, code }) => [row, code])).toEqual([
      [3, 'not-an-email'],
      [4, expect.any(String)],
      [5, 'needed'],
    ]);
    const out = await takeOut({ ask }, { importId: taken?.importId ?? '' });
    expect(out.counts).toEqual(taken?.counts);
  });

  it('asks the owner to look at nothing that only the making of the demo explains', async () => {
    const found = await must('oversight.list', { from: '2023-01-01', to: NOW.slice(0, 10) });
    // As many as are looked at in one go, and some left over.
    expect(found.leftOut).toBeGreaterThan(0);
    expect(JSON.stringify(found)).not.toContain('photo-from-another-time');
  });
});
