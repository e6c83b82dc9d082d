/** Builds the small libraries that play a bad disk, loaded before the C library; null where they can't be built. */
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { APP_ROOT } from '../support/testCore.ts';

/** `syncedBytes`: keeps only what was synced. `failingDisk`: is full, or refuses. */
export type Preload = 'syncedBytes' | 'failingDisk';

/** Only Linux loads such a library by an environment variable, and it takes a C compiler. */
export function buildPreload(name: Preload, folder: string): string | null {
  if (process.platform !== 'linux') return null;
  const library = join(folder, `${name}.so`);
  const source = join(APP_ROOT, 'tests/faults', `${name}.c`);
  const built = spawnSync('cc', ['-shared', '-fPIC', '-O2', '-o', library, source, '-ldl', '-lpthread']);
  if (built.error !== undefined) return null;
  if (built.status !== 0) throw new Error(`the library does not build: ${built.stderr.toString()}`);
  return library;
}

export function underCut(library: string, live: string, kept: string): Readonly<Record<string, string>> {
  return { LD_PRELOAD: library, LIGHTOFF_CUT_FOLDER: live, LIGHTOFF_CUT_KEPT: kept };
}

export function underFailures(library: string, folder: string, orders: string): Readonly<Record<string, string>> {
  return { LD_PRELOAD: library, LIGHTOFF_FAIL_FOLDER: folder, LIGHTOFF_FAIL_ORDERS: orders };
}
