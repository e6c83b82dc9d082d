/** Programs of the system that some tests hold our files against; where one is missing those tests are skipped by name. */
import { execFileSync } from 'node:child_process';
import { hasTool, type SystemTool } from '../../scripts/systemTools.ts';

export { hasTool };

export function runTool(name: SystemTool, args: readonly string[]): string {
  return execFileSync(name, args, { encoding: 'utf8', maxBuffer: 64 * 1024 * 1024 });
}
