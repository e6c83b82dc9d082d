/** Builds the small library that plays a disk which keeps only what was synced; null where it can't be built. */
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { APP_ROOT } from '../support/testCore.ts';

/** Only Linux loads such a library before the C library by an environment variable, and it takes a C compiler. */
export function buildSyncedBytes(folder: string): string | null {
  if (process.platform !== 'linux') return null;
  const library = join(folder, 'syncedBytes.so');
  const source = join(APP_ROOT, 'tests/faults/syncedBytes.c');
  const built = spawnSync('cc', ['-shared', '-fPIC', '-O2', '-o', library, source, '-ldl', '-lpthread']);
  if (built.error !== undefined) return null;
  if (built.status !== 0) throw new Error(`the library does not build: ${built.stderr.toString()}`);
  return library;
}

export function underCut(library: string, live: string, kept: string): Readonly<Record<string, string>> {
  return { LD_PRELOAD: library, LIGHTOFF_CUT_FOLDER: live, LIGHTOFF_CUT_KEPT: kept };
}
