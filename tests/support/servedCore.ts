/** The browser host over a real core on a folder of its own. A kill leaves the old core as it is and opens a copy of its files. */
import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type BrowserHost, startBrowserHost } from '../../electron/browserHost.ts';
import type { Core } from '../../electron/core.ts';
import { createCore } from '../../electron/createCore.ts';
import { APP_ROOT } from './testCore.ts';
import { threadsFolder } from './threads.ts';
import type { TurnedClock } from './turnedClock.ts';

export type ServedCore = {
  readonly core: () => Core;
  readonly address: () => string;
  /** What went wrong inside, for a test to say. */
  readonly faults: readonly unknown[];
  /** As a power cut: nothing is closed, nothing written back; what is on the disk at that moment is all there is. */
  readonly kill: () => Promise<void>;
  readonly remove: () => Promise<void>;
};

export async function serveCore(clock: TurnedClock): Promise<ServedCore> {
  const folders: string[] = [];
  const cores: Core[] = [];
  const faults: unknown[] = [];
  const newFolder = () => {
    const folder = mkdtempSync(join(tmpdir(), 'lightoff-job-'));
    folders.push(folder);
    return folder;
  };
  const open = (dataFolder: string): Core => {
    const core = createCore({
      appRoot: APP_ROOT,
      threadsFolder: threadsFolder(),
      dataFolder,
      clock: clock.now,
      steadyClockMs: clock.steadyMs,
      logFault: (error) => String(faults.push(error)),
    });
    cores.push(core);
    return core;
  };
  const serve = (core: Core, port: number): Promise<BrowserHost> =>
    startBrowserHost({
      core,
      rendererFolder: join(APP_ROOT, 'out', 'renderer'),
      port,
      logFault: (error) => {
        faults.push(error);
        return 'ref';
      },
    });
  let folder = newFolder();
  let core = open(folder);
  let host = await serve(core, 0);
  return {
    core: () => core,
    address: () => host.address,
    faults,
    async kill() {
      const { port } = host;
      await host.close();
      const left = folder;
      folder = newFolder();
      cpSync(left, folder, { recursive: true });
      core = open(folder);
      host = await serve(core, port);
    },
    async remove() {
      await host.close();
      for (const one of cores) one.close();
      for (const one of folders) rmSync(one, { recursive: true, force: true });
    },
  };
}
