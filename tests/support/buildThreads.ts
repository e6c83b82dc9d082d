/**
 * Builds the program's threads for one run of the tests. From the sources Node takes the types out of what a thread loads, in
 * that thread and with WebAssembly; threads that do so at once can bring the whole process down (SIGSEGV inside V8).
 */
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { build, mergeConfig } from 'vite';
import { findAppRoot } from '../../electron/appRoot.ts';
import { forNode } from '../../vite.shell.config.ts';
import { THREADS_FOLDER } from './threads.ts';

/** For this process and those it starts from now on; gives back what removes them. */
export async function buildThreads(): Promise<() => void> {
  // The projects of one run share them.
  if (process.env[THREADS_FOLDER] !== undefined) return () => undefined;
  const appRoot = findAppRoot(import.meta.url);
  // Inside out/, so that what stays external is found in node_modules above.
  const outDir = join(appRoot, 'out', `threads-${process.pid}`);
  const utilityProcessWorker = join(appRoot, 'tests', 'support', 'utilityProcessWorker.ts');
  await build({
    ...mergeConfig(forNode(['coreProcess', 'planWorker', 'rehearsalWorker']), {
      build: { outDir, rolldownOptions: { input: { utilityProcessWorker } } },
    }),
    configFile: false,
    logLevel: 'error',
  });
  process.env[THREADS_FOLDER] = outDir;
  return () => rmSync(outDir, { recursive: true, force: true });
}

export default buildThreads;
