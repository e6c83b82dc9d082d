/** Builds page and shell into out/, and knows whether that is needed. A failed build leaves the last good one in place. */
import { readdirSync, renameSync, rmSync, statSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { build, type LogLevel } from 'vite';

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
  const builtAtMs = modifiedAtMs(stampPath(appRoot));
  return builtAtMs === null || sources.some((source) => newestMs(join(appRoot, source)) > builtAtMs);
}

export async function buildApp(appRoot: string, logLevel: LogLevel): Promise<void> {
  const startedAt = new Date();
  const workFolder = join(appRoot, 'out', `building-${process.pid}`);
  try {
    const rendererConfig = join(appRoot, 'vite.renderer.config.ts');
    const shellConfig = join(appRoot, 'vite.shell.config.ts');
    const renderer = join(workFolder, 'renderer');
    const shell = join(workFolder, 'shell');
    await build({ configFile: rendererConfig, logLevel, build: { outDir: renderer } });
    await build({ configFile: shellConfig, mode: 'node', logLevel, build: { outDir: shell } });
    await build({ configFile: shellConfig, mode: 'preload', logLevel, build: { outDir: shell } });
    for (const part of ['renderer', 'shell']) {
      const target = join(appRoot, 'out', part);
      rmSync(target, { recursive: true, force: true });
      renameSync(join(workFolder, part), target);
    }
    // Dated to the start: a source that changed during the build makes it old again.
    writeFileSync(stampPath(appRoot), `${startedAt.toISOString()}\n`);
    utimesSync(stampPath(appRoot), startedAt, startedAt);
  } finally {
    rmSync(workFolder, { recursive: true, force: true });
  }
}

function stampPath(appRoot: string): string {
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
