/** The demo in a temporary folder, with a clock the test turns: three years of visits to work on. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { InputOf, OperationName, OutputOf } from '../../electron/contract/index.ts';
import type { Core } from '../../electron/core.ts';
import { createCore } from '../../electron/createCore.ts';
import { DEMO_PIN } from '../../electron/demo/demoStore.ts';
import { instrumentAtHand } from '../../electron/demo/instrumentAtHand.ts';
import type { RecordedRun } from '../../electron/demo/recordedRun.ts';
import { replayRun } from '../../electron/demo/replayRun.ts';
import { APP_ROOT } from './testCore.ts';
import { type BookedRun, tinyPng } from './wholeJob.ts';

export type DemoCore = {
  readonly core: Core;
  readonly must: <N extends OperationName>(name: N, input: InputOf<N>) => Promise<OutputOf<N>>;
  readonly now: () => string;
  readonly wait: (seconds: number) => void;
  readonly signInAs: (name: string) => Promise<string>;
  readonly applianceOf: (serial: string) => Promise<string>;
  readonly remove: () => void;
};

const CLIENT = 'test-window';

export function openDemoCore(startAt: string): DemoCore {
  const folder = mkdtempSync(join(tmpdir(), 'lightoff-demo-'));
  let ms = Date.parse(startAt);
  const now = () => new Date(ms).toISOString();
  const core = createCore({
    dataFolder: folder,
    appRoot: APP_ROOT,
    clock: now,
    steadyClockMs: () => ms,
    startInDemo: true,
  });
  const must: DemoCore['must'] = async (name, input) => {
    const reply = await core.call(name, input, CLIENT);
    if (reply.ok) return reply.value as never;
    throw new Error(`${name} → ${JSON.stringify(reply.error)}`);
  };
  return {
    core,
    must,
    now,
    wait: (seconds) => {
      ms += seconds * 1000;
    },
    async signInAs(name) {
      const { people } = await must('app.status', {});
      const person = people.find((one) => one.name === name);
      if (person === undefined) throw new Error(`the demo has no ${name}`);
      await must('session.signIn', { staffId: person.staffId, pin: DEMO_PIN });
      return person.staffId;
    },
    async applianceOf(serial) {
      const { rows } = await must('appliances.list', { query: serial });
      const [row] = rows;
      if (row === undefined) throw new Error(`the demo has no ${serial}`);
      return row.applianceId;
    },
    remove: () => {
      core.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** Opens a job on an appliance, books it today with the signed-in technician alone, and begins it. */
export async function beginJob(
  demo: DemoCore,
  applianceId: string,
  kind: 'service' | 'repair',
  technicianId: string,
): Promise<BookedRun> {
  const { jobId } = await demo.must('jobs.open', { applianceId, kind, note: null });
  const { visitId } = await demo.must('visits.book', {
    jobIds: [jobId],
    plannedOn: demo.now().slice(0, 10),
    plannedFrom: '09:00',
    plannedTo: '12:00',
    durationMin: 120,
    crew: [{ staffId: technicianId, role: 'licensed' }],
    isPencilled: false,
    note: null,
  });
  const { runs } = await demo.must('visits.begin', { visitId });
  const runId = runs.find((run) => run.jobId === jobId)?.runId;
  if (runId === undefined) throw new Error('no run was begun');
  return { visitId, runId, jobId };
}

export async function walkFromNotes(demo: DemoCore, at: BookedRun, notes: RecordedRun) {
  const instruments = await demo.must('instruments.list', {});
  return replayRun(
    notes,
    { visitId: at.visitId, runId: at.runId },
    {
      must: demo.must,
      now: demo.now,
      wait: demo.wait,
      instrumentFor: (quantity) => instrumentAtHand(quantity, instruments, null),
      async putPhoto(fileName) {
        const reply = await demo.core.putFile(
          { bytes: tinyPng(fileName), mediaType: 'image/png', fileName, takenAt: demo.now() },
          CLIENT,
        );
        if (!reply.ok) throw new Error(reply.code);
        return reply.attachmentId;
      },
    },
  );
}
