/** The core in a process of its own, so that a long query never holds up the window: opens the store and serves the ports it is handed. */
import type { Core } from './core.ts';
import type { CoreCommand, CoreNotice } from './coreCommands.ts';
import { createCore } from './createCore.ts';
import { type FaultLog, openFaultLog } from './faultLog.ts';
import { adaptPort } from './portAdapter.ts';
import { servePort } from './portServer.ts';

let core: Core | null = null;
/** Known once the main process has said where the data lies. */
let logFault: FaultLog = () => 'unknown';

process.parentPort.on('message', (event) => {
  // Only the main process holds the other end.
  const command = event.data as CoreCommand;
  switch (command.kind) {
    case 'open':
      open(command);
      break;
    case 'connect': {
      const [port] = event.ports;
      if (core !== null && port !== undefined) servePort(core, adaptPort(port), command.clientId, logFault);
      break;
    }
    case 'close':
      core?.close();
      process.exit(0);
  }
});

function open(command: CoreCommand & { readonly kind: 'open' }): void {
  logFault = openFaultLog(command.dataFolder, command.appRoot);
  try {
    core = createCore({
      appRoot: command.appRoot,
      dataFolder: command.dataFolder,
      startInDemo: command.startInDemo,
    });
  } catch (error) {
    logFault(error);
    const notice: CoreNotice = { kind: 'cannot-open', why: error instanceof Error ? error.message : String(error) };
    process.parentPort.postMessage(notice);
  }
}
