/**
 * What passes the door and still makes no sense: fields of the right shape with ids that are stale, of another kind or of
 * another record. Every operation answers with a failure it declares, never with a bug, and a refused call writes nothing.
 */
import Database from 'better-sqlite3';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { storePath } from '../../../db/openStore.ts';
import { contract, type OperationName } from '../../../electron/contract/index.ts';
import { commonErrors } from '../../../electron/contract/operation.ts';
import { inputArbitrary, type KnownIds, STALE_ID } from '../../support/inputArbitrary.ts';
import { type Office, PIN, setUpHouse, setUpOffice } from '../../support/officeScenario.ts';
import { openTestCore, type TestCore } from '../../support/testCore.ts';
import { bookAndBegin, readStartupNotes, walkRun } from '../../support/wholeJob.ts';

/** What would end the session, change who may go on, or put another store in the place of this one. */
const NOT_HERE = [
  'app.completeFirstRun',
  'app.openDemo',
  'app.leaveDemo',
  'session.signIn',
  'session.signOut',
  'staff.setPin',
  'staff.update',
  'backups.restore',
  'rescue.restore',
] as const;
const NAMES = (Object.keys(contract) as OperationName[]).filter((name) => !NOT_HERE.some((one) => one === name));
const RUNS = 12;
/** Inputs without anything to vary, or so slow that a few say as much. */
const FEW = new Set<OperationName>([
  'backups.make',
  'backups.carryOver',
  'exports.goOn',
  'dues.rebuild',
  'messages.prepare',
  'packets.build',
]);

describe('well-shaped inputs that make no sense', () => {
  let test: TestCore;
  let office: Office;
  let watch: Database.Database;
  beforeAll(async () => {
    test = openTestCore();
    office = await setUpOffice(test);
    const sealed = await bookAndBegin(test, office);
    await walkRun(test, office, sealed, readStartupNotes());
    await test.must('visits.finish', { visitId: sealed.visitId, outcome: 'finished', reason: null, labourMin: 180 });
    await test.must('visits.seal', { visitId: sealed.visitId, runId: sealed.runId });
    await test.must('session.signIn', { staffId: office.ownerId, pin: PIN });
    const house = await setUpHouse(test, { appliance: { serial: 'TK300001' } }, office.customerId);
    await walkRun(test, office, await bookAndBegin(test, { ...office, ...house }), readStartupNotes(), 'plate-photo');
    await test.must('session.signIn', { staffId: office.ownerId, pin: PIN });
    // Whoever asks may do everything: what refuses is never the door.
    await test.must('staff.update', {
      staffId: office.ownerId,
      name: 'Maren Oduya',
      initials: 'MO',
      phone: null,
      email: null,
      roles: ['owner', 'dispatcher', 'technician'],
      activeTo: null,
    });
    await test.must('staff.addLicence', {
      staffId: office.ownerId,
      licence: {
        number: 'G2-1',
        issuer: 'Provincial gas board',
        place: 'Nova Scotia',
        licenceClass: 'G2',
        fuel: null,
        maxKw: 117,
        validFrom: '2025-01-01',
        validTo: '2027-12-31',
      },
    });
    watch = new Database(storePath(test.folder), { readonly: true });
  }, 120_000);
  afterAll(() => {
    watch.close();
    test.remove();
  });

  it.each(NAMES)(
    '%s',
    async (name) => {
      const spec = contract[name];
      const declared = [...Object.keys(commonErrors), ...Object.keys(spec.errors)];
      const known = readIds(watch);
      let reached = 0;
      await fc.assert(
        fc.asyncProperty(inputArbitrary(spec.input, known), async (input) => {
          const before = watch.pragma('data_version', { simple: true });
          const reply = await test.core.call(name, input, 'test-window');
          if (reply.ok) {
            reached += 1;
            return;
          }
          const { code } = reply.error;
          expect(declared).toContain(code);
          expect(code).not.toBe('internal');
          expect(watch.pragma('data_version', { simple: true })).toBe(before);
          if (code !== 'bad-input') reached += 1;
        }),
        { numRuns: FEW.has(name) ? 3 : RUNS },
      );
      expect(reached).toBeGreaterThan(0);
    },
    120_000,
  );
});

describe('what once was answered as a bug', () => {
  let test: TestCore;
  let office: Office;
  beforeAll(async () => {
    test = openTestCore();
    office = await setUpOffice(test);
  });
  afterAll(() => test.remove());

  it('a date of one kind twice, at a new appliance', async () => {
    const { appliance } = await test.must('appliances.get', { applianceId: office.applianceId });
    const occupied = { kind: 'occupied', on: '2026-03-02', precision: 'day', source: 'owner' } as const;
    const twice = { appliance: { ...appliance, serial: 'T2' }, position: null, dates: [occupied, occupied] };
    expect(await test.ask('appliances.create', { siteId: office.siteId, ...twice })).toMatchObject({
      error: { code: 'bad-input' },
    });
  });

  it('the same person twice in a crew', async () => {
    const { jobId } = await test.must('jobs.open', { applianceId: office.applianceId, kind: 'service', note: null });
    const once = { staffId: office.technicianId, role: 'lead' } as const;
    const visit = { plannedOn: '2026-03-02', plannedFrom: null, plannedTo: null, durationMin: 60, note: null };
    const asked = { jobIds: [jobId], ...visit, crew: [once, { ...once, role: 'helper' as const }], isPencilled: true };
    expect(await test.ask('visits.book', asked)).toMatchObject({ error: { code: 'bad-input' } });
  });

  it('a gas load of an appliance nobody knows', async () => {
    const { gasSupply } = await test.must('sites.get', { siteId: office.siteId });
    if (gasSupply === null) throw new Error('the house has gas');
    const loads = [{ name: 'boiler', inputKw: 25, applianceId: STALE_ID }];
    const asked = { siteId: office.siteId, gasSupply: { ...gasSupply, loads } };
    expect(await test.ask('sites.setGasSupply', asked)).toMatchObject({ error: { code: 'not-found' } });
  });
});

function readIds(watch: Database.Database): KnownIds {
  const tables = watch
    .prepare(
      "SELECT m.name FROM sqlite_schema m JOIN pragma_table_info(m.name) c WHERE m.type = 'table' AND c.name = 'id' AND m.name <> 'op'",
    )
    .pluck()
    .all() as string[];
  return new Map(
    tables.flatMap((table) => {
      const ids = watch.prepare(`SELECT id FROM "${table}" ORDER BY id DESC LIMIT 6`).pluck().all() as unknown[];
      const own = ids.filter((id) => typeof id === 'string');
      return own.length === 0 ? [] : [[table, own] as const];
    }),
  );
}
