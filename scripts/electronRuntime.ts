/**
 * Whether the desktop shell's runtime is here and can show a window. Looks at the files alone: requiring the package
 * would start a download and wait for it.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { err, ok, type Result } from '../domain/result.ts';
import type { Environment } from '../electron/dataFolder.ts';

export type NoShell = 'no-runtime' | 'no-display' | 'runs-as-root';

const fetchWithinMs = 60_000;

export function findElectron(appRoot: string, environment: Environment): string | null {
  const packageFolder = join(appRoot, 'node_modules', 'electron');
  const pathFile = join(packageFolder, 'path.txt');
  if (!existsSync(pathFile)) return null;
  const distFolder = environment['ELECTRON_OVERRIDE_DIST_PATH'] || join(packageFolder, 'dist');
  const binary = join(distFolder, readFileSync(pathFile, 'utf8').trim());
  return existsSync(binary) ? binary : null;
}

export type Machine = {
  readonly platform: NodeJS.Platform;
  readonly environment: Environment;
  /** Null where the system has no such number. */
  readonly userNumber: number | null;
};

/** The binary to start, or why there will be no window. */
export function chooseShell(appRoot: string, machine: Machine): Result<string, NoShell> {
  const binary = findElectron(appRoot, machine.environment);
  if (binary === null) return err('no-runtime');
  if (machine.platform === 'linux') {
    if (!machine.environment['DISPLAY'] && !machine.environment['WAYLAND_DISPLAY']) return err('no-display');
    // Chromium's sandbox refuses root, and the sandbox is not given up.
    if (machine.userNumber === 0) return err('runs-as-root');
  }
  return ok(binary);
}

/** One try, within a minute. */
export function fetchElectron(appRoot: string): void {
  spawnSync(process.execPath, [join(appRoot, 'node_modules', 'electron', 'install.js')], {
    stdio: 'ignore',
    timeout: fetchWithinMs,
    killSignal: 'SIGKILL',
  });
}
