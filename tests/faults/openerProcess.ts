/** Opens the production store in a folder, which migrates it where it must, and says so; then makes copies if asked to. */
import { createCore } from '../../electron/createCore.ts';

const [dataFolder, appRoot, staffId, pin] = process.argv.slice(2);
if (dataFolder === undefined || appRoot === undefined) throw new Error('two arguments are needed');
const core = createCore({ dataFolder, appRoot });
process.stdout.write('opened\n');
if (staffId !== undefined && pin !== undefined) {
  await core.call('session.signIn', { staffId, pin }, 'opener');
  for (;;) {
    const reply = await core.call('backups.make', {}, 'opener');
    if (!reply.ok) throw new Error(JSON.stringify(reply.error));
    process.stdout.write(`copied ${(reply.value as { name: string }).name}\n`);
    // Copies are named by the second.
    await new Promise((resolve) => setTimeout(resolve, 1000 - (Date.now() % 1000)));
  }
}
// Stays until it is killed.
setInterval(() => undefined, 60_000);
