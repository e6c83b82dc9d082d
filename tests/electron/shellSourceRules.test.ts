/** What no single unit can show: that nothing else in the source goes round the guards. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { findAppRoot } from '../../electron/appRoot.ts';

const appRoot = findAppRoot(import.meta.url);

function sourcesIn(folder: string): readonly string[] {
  return readdirSync(join(appRoot, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.(ts|tsx|html|css)$/.test(name))
    .map((name) => join(folder, name));
}

const shellSources = sourcesIn('electron');
const pageSources = sourcesIn('renderer');

function filesWith(pattern: RegExp, files: readonly string[]): readonly string[] {
  return files.filter((file) => pattern.test(readFileSync(join(appRoot, file), 'utf8')));
}

describe('the source of shell and page', () => {
  it('is there to be looked at', () => {
    expect(shellSources.length).toBeGreaterThan(30);
    expect(pageSources.length).toBeGreaterThan(10);
  });

  it('makes windows in one place', () => {
    expect(filesWith(/new (BrowserWindow|BaseWindow|WebContentsView|BrowserView)\b/, shellSources)).toEqual([
      'electron/window.ts',
    ]);
  });

  it('listens to the page through one door', () => {
    expect(filesWith(/\bipc(Main)?\.(handle|on|once|handleOnce)\(/, shellSources)).toEqual([
      'electron/handleFromWindow.ts',
    ]);
  });

  it('opens outside addresses in one place, behind the judgement', () => {
    expect(filesWith(/openExternal|openPath/, shellSources)).toEqual(['electron/startShell.ts']);
    expect(filesWith(/openOutside\(/, shellSources)).toEqual(['electron/guardContents.ts']);
  });

  it('hands the raw message channel to nobody', () => {
    expect(filesWith(/\bipcRenderer\b/, shellSources)).toEqual(['electron/preload.ts']);
    expect(readFileSync(join(appRoot, 'electron/preload.ts'), 'utf8')).not.toMatch(
      /exposeInMainWorld\([^)]*ipcRenderer/,
    );
  });

  it('loads nothing over plain http and nothing from another host', () => {
    // An XML namespace is a name, not an address.
    const foreign = /https?:\/\/(?!www\.w3\.org\/(2000\/svg|1999\/xhtml|1999\/xlink))/;
    expect(filesWith(foreign, pageSources)).toEqual([]);
  });

  it('writes no markup and no code from strings', () => {
    expect(
      filesWith(/dangerouslySetInnerHTML|\.innerHTML|\beval\(|new Function\(|document\.write/, pageSources),
    ).toEqual([]);
  });

  it('uses no webview and no remote module', () => {
    expect(
      filesWith(/<webview|webviewTag: true|@electron\/remote|enableBlinkFeatures/, [...shellSources, ...pageSources]),
    ).toEqual([]);
  });

  it('has shell code import the runtime only where windows are', () => {
    const importers = filesWith(/from 'electron'/, shellSources);
    expect(importers).toEqual(
      [
        'appMenu',
        'coreSupervisor',
        'grantPermissions',
        'guardContents',
        'handleFromWindow',
        'preload',
        'startShell',
        'window',
      ].map((name) => `electron/${name}.ts`),
    );
  });
});
