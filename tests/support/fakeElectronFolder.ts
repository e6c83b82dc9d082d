/** A folder that a packager takes for the runtime: the mark that fuses are found by, a version, and nothing that could run. */
import { chmodSync, mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/** From @electron/fuses: what stands before the fuses in the real binary. */
const fuseSentinel = 'dL7pKGdnNz796PbbjQWNKmHXBZaB9tsX';
/** As the runtime ships: "0" off, "1" on; version 1 of the wire. */
const shippedFuses = '101100101';

export function makeFakeElectron(folder: string, version: string): void {
  mkdirSync(join(folder, 'resources'), { recursive: true });
  const wire = Buffer.concat([
    Buffer.alloc(64),
    Buffer.from(fuseSentinel),
    Buffer.from([1, shippedFuses.length]),
    Buffer.from(shippedFuses),
    Buffer.alloc(64),
  ]);
  writeFileSync(join(folder, 'electron'), wire);
  chmodSync(join(folder, 'electron'), 0o755);
  writeFileSync(join(folder, 'version'), version);
}
