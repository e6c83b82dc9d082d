/** Keeps the core's process running and every window connected to it: after a crash it starts anew and hands out new ports. */
import { MessageChannelMain, type UtilityProcess, utilityProcess, type WebContents } from 'electron';
import { coreLostMessage, portMessage } from './contract/wire.ts';
import type { CoreCommand, CoreLocation, CoreNotice } from './coreCommands.ts';

export type CoreSupervisor = {
  readonly connect: (window: WebContents, clientId: string) => void;
  /** Resolves when the store is closed, or when the process is gone anyway. */
  readonly close: () => Promise<void>;
};

export type SupervisorOptions = {
  readonly coreProcessPath: string;
  readonly location: CoreLocation;
  /** The store can't be opened: trying again would not help. */
  readonly onCannotOpen: (why: string) => void;
};

const firstRestartMs = 200;
const slowestRestartMs = 10_000;
/** A process that ran this long did not fail because of how it was started. */
const soundAfterMs = 60_000;
const closeWithinMs = 5_000;

export function superviseCore(options: SupervisorOptions): CoreSupervisor {
  const windows = new Map<WebContents, string>();
  let isClosing = false;
  let restartMs = firstRestartMs;
  let child = start();

  function start(): UtilityProcess {
    const startedAt = performance.now();
    const started = utilityProcess.fork(options.coreProcessPath, [], { serviceName: 'Lightoff core' });
    started.on('message', (notice: CoreNotice) => {
      isClosing = true;
      options.onCannotOpen(notice.why);
    });
    started.on('exit', () => {
      if (isClosing) return;
      tellLost();
      if (performance.now() - startedAt > soundAfterMs) restartMs = firstRestartMs;
      setTimeout(restart, restartMs);
      restartMs = Math.min(2 * restartMs, slowestRestartMs);
    });
    send(started, { kind: 'open', ...options.location });
    return started;
  }

  function restart(): void {
    if (isClosing) return;
    child = start();
    for (const [window, clientId] of windows) handPort(window, clientId);
  }

  function handPort(window: WebContents, clientId: string): void {
    const { port1, port2 } = new MessageChannelMain();
    child.postMessage({ kind: 'connect', clientId } satisfies CoreCommand, [port1]);
    window.postMessage(portMessage, null, [port2]);
  }

  function tellLost(): void {
    for (const window of windows.keys()) window.send(coreLostMessage);
  }

  return {
    connect: (window, clientId) => {
      if (!windows.has(window)) window.once('destroyed', () => windows.delete(window));
      windows.set(window, clientId);
      handPort(window, clientId);
    },
    close: async () => {
      isClosing = true;
      const running = child;
      await new Promise<void>((resolve) => {
        const giveUp = setTimeout(() => {
          running.kill();
          resolve();
        }, closeWithinMs);
        running.once('exit', () => {
          clearTimeout(giveUp);
          resolve();
        });
        send(running, { kind: 'close' });
        if (running.pid === undefined) {
          clearTimeout(giveUp);
          resolve();
        }
      });
    },
  };
}

function send(child: UtilityProcess, command: CoreCommand): void {
  child.postMessage(command);
}
