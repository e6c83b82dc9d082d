/** Installing what the tests need from Debian's packages, where that is allowed. */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';

const WITHIN_MS = 300_000;

export function mayInstallDebian(): boolean {
  return process.getuid?.() === 0 && existsSync('/etc/debian_version');
}

/** The package lists may be missing or old: fetched when the first try fails. */
export function installFromDebian(packages: readonly string[]): void {
  const install = ['install', '-y', '--no-install-recommends', ...packages];
  if (runLoudly('apt-get', install)) return;
  runLoudly('apt-get', ['update']);
  runLoudly('apt-get', install);
}

export function runLoudly(command: string, args: readonly string[]): boolean {
  process.stdout.write(`${command} ${args.join(' ')}\n`);
  const done = spawnSync(command, args, {
    stdio: 'inherit',
    timeout: WITHIN_MS,
    // npx is a script there.
    shell: process.platform === 'win32',
    env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
  });
  return done.status === 0;
}
