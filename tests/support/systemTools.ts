/** Programs of the system that some tests hold our files against; where one is missing those tests are skipped by name. */
import { execFileSync, spawnSync } from 'node:child_process';

export function hasTool(name: string): boolean {
  return spawnSync(name, ['--version']).error === undefined;
}

export function runTool(name: string, args: readonly string[]): string {
  return execFileSync(name, args, { encoding: 'utf8', maxBuffer: 64 * 1024 * 1024 });
}
