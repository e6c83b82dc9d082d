/** Whether out/ is missing or older than what it is made of. Apart from the build itself, so that a start need not load the bundler. */
import { readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';

/** What the built files are made of, seen from the app's root. */
const sources = [
  'assets',
  'db',
  'domain',
  'electron',
  'renderer',
  'package-lock.json',
  'vite.renderer.config.ts',
  'vite.shell.config.ts',
];

export function isBuildNeeded(appRoot: string): boolean {
  const builtAtMs = modifiedAtMs(buildStampPath(appRoot));
  return builtAtMs === null || sources.some((source) => newestMs(join(appRoot, source)) > builtAtMs);
}

/** Its time is that of the last build. */
export function buildStampPath(appRoot: string): string {
  return join(appRoot, 'out', 'built.txt');
}

function newestMs(path: string): number {
  const stats = statSync(path, { throwIfNoEntry: false });
  if (stats === undefined) return 0;
  if (!stats.isDirectory()) return stats.mtimeMs;
  // A folder's own time tells of files that were taken away.
  return readdirSync(path).reduce((newest, name) => Math.max(newest, newestMs(join(path, name))), stats.mtimeMs);
}

function modifiedAtMs(path: string): number | null {
  return statSync(path, { throwIfNoEntry: false })?.mtimeMs ?? null;
}
