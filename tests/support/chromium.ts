/** Finds a Chromium, Chrome or Edge on this computer for the tests that need a real page, and starts it. */
import { existsSync } from 'node:fs';
import { homedir } from 'node:os';
import { join } from 'node:path';
import { type Browser, chromium, type LaunchOptions } from 'playwright-core';

export const chromiumFlags: readonly string[] = [
  '--disable-gpu',
  '--disable-quic',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--no-first-run',
];

/** Throws in plain words when there is none. */
export function findChromium(environment: NodeJS.ProcessEnv = process.env): string {
  const chosen = environment['LIGHTOFF_BROWSER'];
  if (chosen) {
    if (existsSync(chosen)) return chosen;
    throw new Error(`LIGHTOFF_BROWSER names a file that is not there: ${chosen}`);
  }
  const found = [...usualPlaces(process.platform, environment), chromium.executablePath()].find(
    (path) => path !== '' && existsSync(path),
  );
  if (found !== undefined) return found;
  throw new Error(
    'No Chromium, Chrome or Edge found. `npm run browser` installs one, or set LIGHTOFF_BROWSER to its path.',
  );
}

export function launchChromium(): Promise<Browser> {
  return chromium.launch(chromiumLaunch());
}

export function chromiumLaunch(): LaunchOptions {
  const isRoot = process.getuid?.() === 0;
  return {
    executablePath: findChromium(),
    headless: true,
    // Chromium's own sandbox refuses to run as root.
    args: [...chromiumFlags, ...(isRoot ? ['--no-sandbox'] : [])],
  };
}

function usualPlaces(platform: NodeJS.Platform, environment: NodeJS.ProcessEnv): readonly string[] {
  if (platform === 'win32') {
    const roots = ['PROGRAMFILES', 'PROGRAMFILES(X86)', 'LOCALAPPDATA'].map((name) => environment[name] ?? '');
    const programs = [
      ['Chromium', 'Application', 'chrome.exe'],
      ['Google', 'Chrome', 'Application', 'chrome.exe'],
      ['Microsoft', 'Edge', 'Application', 'msedge.exe'],
    ];
    return roots.filter((root) => root !== '').flatMap((root) => programs.map((program) => join(root, ...program)));
  }
  if (platform === 'darwin') {
    const programs = ['Chromium', 'Google Chrome', 'Microsoft Edge'];
    return ['/Applications', join(homedir(), 'Applications')].flatMap((folder) =>
      programs.map((name) => join(folder, `${name}.app`, 'Contents', 'MacOS', name)),
    );
  }
  const names = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'microsoft-edge'];
  return ['/usr/bin', '/usr/local/bin', '/snap/bin'].flatMap((folder) => names.map((name) => join(folder, name)));
}
