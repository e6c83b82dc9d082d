/** A core of its own that saves readings as fast as it can and says each one once it was answered; made to be killed. */
import type { InputOf, OperationName, OutputOf } from '../../electron/contract/index.ts';
import { createCore } from '../../electron/createCore.ts';

const [dataFolder, appRoot, staffId, pin, visitId, runId] = process.argv.slice(2);
if (
  dataFolder === undefined ||
  appRoot === undefined ||
  staffId === undefined ||
  pin === undefined ||
  visitId === undefined ||
  runId === undefined
) {
  throw new Error('six arguments are needed');
}
const core = createCore({ dataFolder, appRoot });

async function must<N extends OperationName>(name: N, input: InputOf<N>): Promise<OutputOf<N>> {
  const reply = await core.call(name, input, 'writer');
  if (!reply.ok) throw new Error(`${name}: ${JSON.stringify(reply.error)}`);
  return reply.value as never;
}

await must('session.signIn', { staffId, pin });
// A wait that runs over all the kills: begun once, then found.
const ref = { visitId, runId };
const wait = { ...ref, stepKey: 'analyser-check', itemKey: 'analyser-zero' };
const holdStart = async () => (await must('visits.getRun', ref)).record.holds.map(({ startedAt }) => startedAt)[0];
if ((await holdStart()) === undefined) {
  await must('visits.openStep', { ...ref, stepKey: 'analyser-check' });
  await must('visits.startHold', wait);
  await must('visits.openStep', { ...ref, stepKey: 'fill' });
}
process.stdout.write(`hold ${await holdStart()}\n`);
process.stdout.write('ready\n');
for (let count = 1; ; count += 1) {
  const typedText = (0.8 + (count % 70) / 100).toFixed(2);
  const { readingId } = await must('visits.recordReading', {
    visitId,
    runId,
    stepKey: 'fill',
    itemKey: 'cold-pressure',
    quantity: 'systemPressureBarG',
    sample: 1,
    typedText,
    typedUnit: 'bar',
    notMeasuredReason: null,
    instrumentId: null,
    measuredById: null,
  });
  // Said only after the answer: what a screen would show as saved.
  process.stdout.write(`saved ${readingId} ${typedText}\n`);
}
