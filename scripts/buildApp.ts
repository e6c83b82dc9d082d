/** Builds page and shell into out/. A failed build leaves the last good one in place. */
import { renameSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { build, type LogLevel } from 'vite';
import { buildStampPath } from './buildCheck.ts';

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
    writeFileSync(buildStampPath(appRoot), `${startedAt.toISOString()}\n`);
    utimesSync(buildStampPath(appRoot), startedAt, startedAt);
  } finally {
    rmSync(workFolder, { recursive: true, force: true });
  }
}
