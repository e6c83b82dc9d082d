/** Installing what the tests need from Debian's packages, where that is allowed. */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';

const WITHIN_MS = 300_000;

export function mayInstallDebian(): boolean {
  return process.getuid?.() === 0 && existsSync('/etc/debian_version');
}

/** The package lists may be missing or old: fetched when the first try fails. All of it within that time. */
export function installFromDebian(packages: readonly string[], withinMs = WITHIN_MS): void {
  const endsAt = Date.now() + withinMs;
  const apt = (...args: readonly string[]): boolean => {
    const leftMs = endsAt - Date.now();
    return leftMs > 0 && runLoudly('apt-get', args, leftMs);
  };
  const install = ['install', '-y', '--no-install-recommends', ...packages];
  if (apt(...install)) return;
  apt('update');
  apt(...install);
}

export function runLoudly(command: string, args: readonly string[], withinMs = WITHIN_MS): boolean {
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
