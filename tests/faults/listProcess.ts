/** A core of its own that takes a list in, or out again, and says when it is in the middle of its rows; made to be killed. */
import type { InputOf, OperationName, OutputOf } from '../../electron/contract/index.ts';
import { createCore } from '../../electron/createCore.ts';

const [dataFolder, appRoot, staffId, pin, what, id] = process.argv.slice(2);
if (
  dataFolder === undefined ||
  appRoot === undefined ||
  staffId === undefined ||
  pin === undefined ||
  id === undefined
) {
  throw new Error('six arguments are needed');
}
const core = createCore({ dataFolder, appRoot });

async function must<N extends OperationName>(name: N, input: InputOf<N>): Promise<OutputOf<N>> {
  const reply = await core.call(name, input, 'lists');
  if (!reply.ok) throw new Error(`${name}: ${JSON.stringify(reply.error)}`);
  return reply.value as never;
}

await must('session.signIn', { staffId, pin });
const { workId } =
  what === 'in'
    ? await must('imports.start', {
        attachmentId: id,
        mapping: (await must('imports.check', { attachmentId: id })).mapping,
      })
    : await must('imports.startUndo', { importId: id });
process.stdout.write('begun\n');
for (;;) {
  const progress = await must('imports.follow', { workId });
  if (progress.isDone) break;
  process.stdout.write(`at ${progress.step?.doing ?? 'nothing'} ${progress.step?.done ?? 0}\n`);
}
process.stdout.write('through\n');
// What was said stays said: the kill comes when it comes.
setInterval(() => {}, 1000);
