/** Builds the shell with its real config, and the probe page, into a folder of this run alone. */
import { readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'vite';
import { findAppRoot } from '../../electron/appRoot.ts';

const appRoot = findAppRoot(import.meta.url);
const pageSource = join(appRoot, 'tests', 'renderer', 'shellPage');

export type ShellBuild = {
  readonly appRoot: string;
  readonly rendererFolder: string;
  readonly shellFolder: string;
  readonly preloadScript: string;
  readonly electronScript: string;
  readonly remove: () => void;
};

/** Inside out/, so that what stays external is found in node_modules above. */
function workFolder(): string {
  return join(appRoot, 'out', `test-${process.pid}-${performance.now().toFixed(0)}`);
}

/** The probe page alone, as the browser host serves it. */
export async function buildProbePage(): Promise<Pick<ShellBuild, 'appRoot' | 'rendererFolder' | 'remove'>> {
  const folder = workFolder();
  const rendererFolder = join(folder, 'renderer');
  await build({
    root: pageSource,
    base: './',
    configFile: false,
    logLevel: 'error',
    build: { outDir: rendererFolder, emptyOutDir: true, target: 'chrome140', modulePreload: { polyfill: false } },
  });
  return { appRoot, rendererFolder, remove: () => rmSync(folder, { recursive: true, force: true }) };
}

export async function buildShell(): Promise<ShellBuild> {
  const page = await buildProbePage();
  const folder = join(page.rendererFolder, '..');
  const shellFolder = join(folder, 'shell');
  const configFile = join(appRoot, 'vite.shell.config.ts');
  await build({ configFile, mode: 'node', logLevel: 'error', build: { outDir: shellFolder } });
  await build({ configFile, mode: 'preload', logLevel: 'error', build: { outDir: shellFolder } });
  await build({
    configFile: false,
    publicDir: false,
    logLevel: 'error',
    build: {
      outDir: join(folder, 'page'),
      lib: {
        entry: join(pageSource, 'electronInPage.ts'),
        formats: ['iife'],
        name: 'electronInPage',
        fileName: () => 'electron.js',
      },
    },
  });
  return {
    ...page,
    shellFolder,
    preloadScript: readFileSync(join(shellFolder, 'preload.cjs'), 'utf8'),
    electronScript: readFileSync(join(folder, 'page', 'electron.js'), 'utf8'),
  };
}
