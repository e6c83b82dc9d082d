/** Changes the firm's phone number and goes back to a backup, by turns, and says each once it was answered; made to be killed. */
import type { InputOf, OperationName, OutputOf } from '../../electron/contract/index.ts';
import { createCore } from '../../electron/createCore.ts';

const [dataFolder, appRoot, staffId, pin, copyName] = process.argv.slice(2);
if (!dataFolder || !appRoot || !staffId || !pin || !copyName) throw new Error('five arguments are needed');
const core = createCore({ dataFolder, appRoot });

async function must<N extends OperationName>(name: N, input: InputOf<N>): Promise<OutputOf<N>> {
  const reply = await core.call(name, input, 'restorer');
  if (!reply.ok) throw new Error(`${name}: ${JSON.stringify(reply.error)}`);
  return reply.value as never;
}

for (let count = 1; ; count += 1) {
  await must('session.signIn', { staffId, pin });
  const { company } = await must('app.status', {});
  if (company === null) throw new Error('the store is empty');
  const phone = `902 555 ${String(1000 + count)}`;
  await must('company.update', { ...company, phone });
  process.stdout.write(`phone ${phone}\n`);
  await must('backups.restore', { name: copyName });
  process.stdout.write('back\n');
}
