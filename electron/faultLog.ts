/** Where a host writes a bug down: the details under a reference in the log, the reference alone to whoever asked. */
import { randomUUID } from 'node:crypto';

export type FaultLog = (error: unknown) => string;

export function logFault(error: unknown): string {
  const ref = randomUUID().slice(0, 8);
  const details = error instanceof Error ? (error.stack ?? error.message) : String(error);
  process.stderr.write(`fault ${ref} at ${new Date().toISOString()}: ${details}\n`);
  return ref;
}
