/** Runs the app for a browser in this process until it is told to stop; then closes the store before it ends. */
import { homedir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { FolderInUse } from '../db/folderLock.ts';
import { findAppRoot } from './appRoot.ts';
import { type BrowserHost, startBrowserHost } from './browserHost.ts';
import type { Core } from './core.ts';
import { type CoreOptions, createCore } from './createCore.ts';
import { defaultDataFolder } from './dataFolder.ts';
import { type FaultLog, openFaultLog } from './faultLog.ts';
import { type LaunchOptions, launchHelp, parseLaunchOptions } from './launchOptions.ts';

/** Always the same when it is free: what a browser remembers for this page hangs on the port. */
const usualPort = 47_911;

export async function serveInBrowser(options: LaunchOptions): Promise<void> {
  const appRoot = findAppRoot(import.meta.url);
  const dataFolder = options.dataFolder ?? defaultDataFolder(process.platform, process.env, homedir());
  const logFault = openFaultLog(dataFolder, appRoot);
  if (options.startInDemo)
    process.stdout.write('Opening the demo company; the first time it is made, which takes a while.\n');
  const core = openCore({ appRoot, dataFolder, startInDemo: options.startInDemo });
  const host = await listen(core, join(appRoot, 'out', 'renderer'), options.port, logFault).catch((error: unknown) => {
    core.close();
    throw error;
  });
  process.stdout.write(`Data: ${dataFolder}\nOpen in a browser on this computer: ${host.address}\nCtrl-C stops it.\n`);
  let isStopping = false;
  const stop = (): void => {
    if (isStopping) return;
    isStopping = true;
    host
      .close()
      .then(() => core.close())
      .then(() => process.exit(0))
      .catch((error: unknown) => {
        logFault(error);
        process.exit(1);
      });
  };
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, stop);
}

/** A second start on the same folder is a slip, not a fault: one line says what to do. */
function openCore(options: CoreOptions): Core {
  try {
    return createCore(options);
  } catch (error) {
    if (!(error instanceof FolderInUse)) throw error;
    process.stderr.write(`${error.message}\n`);
    return process.exit(1);
  }
}

async function listen(
  core: Core,
  rendererFolder: string,
  port: number | null,
  logFault: FaultLog,
): Promise<BrowserHost> {
  if (port !== null) return startBrowserHost({ core, rendererFolder, port, logFault });
  try {
    return await startBrowserHost({ core, rendererFolder, port: usualPort, logFault });
  } catch (error) {
    if (!(error instanceof Error && 'code' in error && error.code === 'EADDRINUSE')) throw error;
    return startBrowserHost({ core, rendererFolder, port: 0, logFault });
  }
}

/** Also a program of its own: `node electron/serveInBrowser.ts --port 0 --data DIR`, when out/renderer is there already. */
if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const parsed = parseLaunchOptions(process.argv.slice(2));
  if (!parsed.ok || parsed.value.help) {
    process.stdout.write(`${launchHelp}\n`);
    process.exit(parsed.ok ? 0 : 2);
  }
  await serveInBrowser(parsed.value);
}
