/** Makes sure that the tests find a browser: says where one is, else installs one. Usage: npm run browser */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { findChromium } from '../tests/support/chromium.ts';

const downloadWithinMs = 300_000;

if (!sayWhere()) {
  const isRootOnDebian = process.getuid?.() === 0 && existsSync('/etc/debian_version');
  if (isRootOnDebian) installFromDebian();
  else run('npx', ['playwright-core', 'install', 'chromium'], downloadWithinMs);
  if (!sayWhere()) {
    process.stderr.write(
      'No browser could be installed. Install Chromium, Chrome or Edge, or set LIGHTOFF_BROWSER to the path of one.\n',
    );
    process.exit(1);
  }
}

function sayWhere(): boolean {
  try {
    process.stdout.write(`Browser for the tests: ${findChromium()}\n`);
    return true;
  } catch (error) {
    process.stdout.write(`${error instanceof Error ? error.message : String(error)}\n`);
    return false;
  }
}

/** The package lists may be missing or old: fetched when the first try fails. */
function installFromDebian(): void {
  const install = ['install', '-y', '--no-install-recommends', 'chromium'];
  if (run('apt-get', install, downloadWithinMs)) return;
  run('apt-get', ['update'], downloadWithinMs);
  run('apt-get', install, downloadWithinMs);
}

function run(command: string, args: readonly string[], withinMs: number): boolean {
  process.stdout.write(`${command} ${args.join(' ')}\n`);
  const done = spawnSync(command, args, {
    stdio: 'inherit',
    timeout: withinMs,
    // npx is a script there.
    shell: process.platform === 'win32',
    env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
  });
  return done.status === 0;
}
