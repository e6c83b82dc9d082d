/**
 * Walks a whole startup as fast as it can, to its sealed record, from wherever it was left; says each thing once it was
 * answered, and what the clock says. Made to be killed.
 */
import type { InputOf, OperationName, OutputOf } from '../../electron/contract/index.ts';
import { createCore } from '../../electron/createCore.ts';
import type { Office } from '../support/officeScenario.ts';
import { type BookedRun, readStartupNotes, walkRun } from '../support/wholeJob.ts';

const [dataFolder, appRoot, pin, officeJson, runJson, clockMs] = process.argv.slice(2);
if (!dataFolder || !appRoot || !pin || !officeJson || !runJson || !clockMs) throw new Error('six arguments are needed');
const office = JSON.parse(officeJson) as Office;
const run = JSON.parse(runJson) as BookedRun;
const CLIENT = 'test-window';

/** Goes on from where the last walker was killed, and passes by being waited for. */
let startMs = Number(clockMs);
const clock = () => startMs + performance.now();
const now = () => new Date(clock()).toISOString();
const core = createCore({ dataFolder, appRoot, clock: now, steadyClockMs: clock });

/** Done before the kill, and found so: what a screen shows then, too. */
const DONE_BEFORE: ReadonlySet<string> = new Set([
  'hold-running',
  'tuning-running',
  'stage-out-of-order',
  'run-sealed',
]);

/** Said once it has something of the run to lose: the moment of the kill counts from here. */
let isGoing = false;
function sayGoing(): void {
  if (!isGoing) process.stdout.write('going\n');
  isGoing = true;
}

async function must<N extends OperationName>(name: N, input: InputOf<N>): Promise<OutputOf<N>> {
  const reply = await core.call(name, input, CLIENT);
  if (reply.ok) {
    if (!name.includes('.get')) process.stdout.write(`done ${JSON.stringify({ name, input, value: reply.value })}\n`);
    if (name.startsWith('visits.') && !name.includes('.get')) sayGoing();
    return reply.value as never;
  }
  if (DONE_BEFORE.has(reply.error.code)) return reply.error.data as never;
  throw new Error(`${name}: ${JSON.stringify(reply.error)}`);
}

await must('session.signIn', { staffId: office.technicianId, pin });
await walkRun(
  {
    must,
    now,
    wait(seconds) {
      startMs += seconds * 1000;
      process.stdout.write(`clock ${Math.round(clock())}\n`);
    },
    core: {
      async putFile(file, clientId) {
        const reply = await core.putFile(file, clientId);
        if (reply.ok) process.stdout.write(`done ${JSON.stringify({ name: 'file', value: reply })}\n`);
        return reply;
      },
    },
  },
  office,
  run,
  readStartupNotes(),
);
const { visitId, runId } = run;
const { state } = await must('visits.get', { visitId });
if (state === 'started') await must('visits.finish', { visitId, outcome: 'finished', reason: null, labourMin: null });
await must('visits.seal', { visitId, runId });
process.stdout.write('sealed\n');
sayGoing();
// Stays until it is killed.
setInterval(() => undefined, 60_000);
