/** A repair in the demo, a propane boiler that is dead at dawn (F-09) and a changed gas valve in one: nothing found, so it ends as one to come back to. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { RecordedRun } from '../../../electron/demo/recordedRun.ts';
import { progressOf } from '../../../electron/demo/replayRun.ts';
import { scenario } from '../../../electron/demo/scenario.ts';
import { beginJob, type DemoCore, openDemoCore, walkFromNotes } from '../../support/demoCore.ts';
import { APP_ROOT } from '../../support/testCore.ts';
import type { BookedRun } from '../../support/wholeJob.ts';

/** Propane, three years old; the demo's dates as written need no moving on this day. */
const START = '2026-03-02T13:00:00.000Z';
const SERIAL = 'EBK20466517';

let demo: DemoCore;
let applianceId: string;
let technicianId: string;
let run: BookedRun;
let notes: RecordedRun;

function repairNotes(): RecordedRun {
  const data = scenario.parse(JSON.parse(readFileSync(join(APP_ROOT, 'assets/demo/scenario.json'), 'utf8')));
  const last = data.visits.findLast((visit) => visit.kind === 'service' && visit.notes?.serial === SERIAL)?.notes;
  if (last == null) throw new Error('the demo has no service of it');
  return {
    ...last,
    startedAt: START,
    answers: {
      ...last.answers,
      symptoms: 'dead most mornings, runs by noon',
      'fault-codes': 'E5',
      resets: 'by the occupant, three times',
      'work-done': 'looked at only',
      'fault-cause': 'not-found',
      'fault-next': 'supplier looks at the tank at dawn',
    },
    readings: {
      ...last.readings,
      'service-cold-pressure': { text: '1.2', unit: 'bar' },
      'hot-pressure': { text: '1.5', unit: 'bar' },
      'tank-level': { text: '33', unit: '%' },
      'outdoor-now': { text: '-3', unit: '°C' },
      'inlet-static': { text: '33.4', unit: 'mbar' },
      'inlet-dynamic': { text: '32.8', unit: 'mbar' },
      'inlet-all-on': { text: '32.2', unit: 'mbar' },
    },
  };
}

/** Everything but the fault, which nobody has found. */
async function walkToTheFault(): Promise<void> {
  await expect(walkFromNotes(demo, run, notes)).rejects.toThrow('stuck at "fault-cause"');
}
const progress = async () => progressOf(await demo.must('visits.getRun', ref()), demo.now());
const ref = () => ({ visitId: run.visitId, runId: run.runId });
const at = (stepKey: string, itemKey: string) => ({ visitId: run.visitId, runId: run.runId, stepKey, itemKey });
const lockoutAt = (happenedOn: string, happenedAt: string, outdoorText: string | null) =>
  demo.must('visits.addLockout', {
    ...at('fault', 'lockout-list'),
    happenedOn,
    happenedAt,
    code: 'E5',
    outdoorText,
    outdoorUnit: '°F',
  });

beforeAll(async () => {
  demo = openDemoCore(START);
  technicianId = await demo.signInAs('Tobias Reyle');
  applianceId = await demo.applianceOf(SERIAL);
  run = await beginJob(demo, applianceId, 'repair', technicianId);
  notes = repairNotes();
  await walkToTheFault();
}, 400_000);
afterAll(() => demo?.remove());

describe('a repair', () => {
  it('keeps lockouts with their time at the site and the cold as it was typed', async () => {
    await lockoutAt('2026-02-26', '07:20', '-3');
    await lockoutAt('2026-02-27', '07:35', '-5');
    await lockoutAt('2026-02-28', '07:30', '-2');
    const wrong = await lockoutAt('2026-02-28', '17:30', null);
    await demo.must('visits.removeRow', { ...at('fault', 'lockout-list'), rowId: wrong.lockoutId });
    const { record } = await demo.must('visits.getRun', ref());
    // Halifax is four hours behind in winter.
    expect(record.lockouts?.map(({ happenedAt }) => happenedAt)).toEqual([
      '2026-02-26T11:20:00Z',
      '2026-02-27T11:35:00Z',
      '2026-02-28T11:30:00Z',
    ]);
    expect(record.lockouts?.[0]).toMatchObject({ outdoorTypedText: '-3', outdoorTypedUnit: '°F', code: 'E5' });
    expect(record.lockouts?.[0]?.outdoorC).toBeCloseTo(-19.44, 2);
    await expect(lockoutAt('2026-03-03', '07:20', null)).rejects.toThrow('day-in-future');
    await expect(lockoutAt('2026-03-01', '07:20', 'cold')).rejects.toThrow('cannot-read');
  });

  it('is not finished while the fault stays open', async () => {
    const finish = demo.must('visits.finish', {
      visitId: run.visitId,
      outcome: 'finished',
      reason: null,
      labourMin: 90,
    });
    await expect(finish).rejects.toThrow('fault-open');
  });

  it('asks for a new tuning run and both ends again once the gas valve was changed', async () => {
    await expect(
      demo.must('visits.addPart', {
        ...at('repair-work', 'parts-changed'),
        partKey: 'flux',
        partNumber: '1',
        serial: null,
      }),
    ).rejects.toThrow('no-such-part');
    await demo.must('visits.addPart', {
      ...at('repair-work', 'parts-changed'),
      partKey: 'gas-valve',
      partNumber: 'GV-118',
      serial: '0042',
    });
    const open = (await progress()).gates.leaving.map(({ itemKey }) => itemKey);
    expect(open).toEqual(expect.arrayContaining(['tuning-run', 'high-flue', 'low-flue', 'fault-cause']));
    await expect(
      demo.must('visits.finish', {
        visitId: run.visitId,
        outcome: 'return-needed',
        reason: 'fault not found',
        labourMin: 90,
      }),
    ).rejects.toThrow('asked-for-part');
    const { entries } = await demo.must('history.get', { applianceId });
    expect(entries.filter(({ kind }) => kind === 'part').map(({ what, detail }) => `${what} ${detail}`)).toEqual([
      'GV-118 Gas valve',
    ]);
  });

  it('ends as one to come back to, and later visits are held against what it left', async () => {
    await walkToTheFault();
    // Behind the fault stands the closing step, which opens only when nothing else is open.
    expect((await progress()).gates.leaving.map(({ itemKey }) => itemKey)).toEqual([
      'fault-cause',
      'second-copy',
      'licensed-signs',
      'occupant-signs',
    ]);
    await demo.must('visits.finish', {
      visitId: run.visitId,
      outcome: 'return-needed',
      reason: 'fault not found',
      labourMin: 140,
    });
    demo.wait(24 * 3600);
    const service = await beginJob(demo, applianceId, 'service', technicianId);
    const past = await demo.must('visits.getPast', { runId: service.runId });
    expect(past.at(-1)).toMatchObject({ kind: 'repair', startsBaseline: true });
  }, 400_000);
});
