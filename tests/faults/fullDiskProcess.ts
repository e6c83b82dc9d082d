/**
 * Saves readings, photos and backups on a disk that fails at each of their write calls in turn, and says what the app answered,
 * what was left behind, and whether it went on once there was room. Run under `failingDisk.c`.
 */

import { openSync, readdirSync, readSync, writeSync } from 'node:fs';
import { constants } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { storePath } from '../../db/openStore.ts';
import { createCore } from '../../electron/createCore.ts';
import { tinyPng } from '../support/wholeJob.ts';

const [dataFolder, appRoot, ordersPath, ownerId, staffId, pin, visitId, runId] = process.argv.slice(2);
if (!dataFolder || !appRoot || !ordersPath || !ownerId || !staffId || !pin || !visitId || !runId)
  throw new Error('eight arguments are needed');

/** Of one failing call: the answer, and what must not be. */
export type Struck = {
  readonly what: string;
  readonly error: string;
  readonly call: number;
  /** `saved`, or the code of the refusal with its reason. */
  readonly answer: string;
  /** Of what was refused: rows that are there all the same, or half files. */
  readonly left: readonly string[];
  /** The same again with room on the disk. */
  readonly afterwards: string;
};

const FINENESS = Number(process.env['LIGHTOFF_DISK_FINENESS'] ?? 1);

let ahead = 0;
const core = createCore({ dataFolder, appRoot, clock: () => new Date(Date.now() + ahead).toISOString() });
const orders = openSync(ordersPath, 'r+');
const order = (error: number, left: number, once: number) =>
  writeSync(orders, new Uint8Array(Int32Array.from([error, left, once, 0]).buffer), 0, 16, 0);
const struck = (): number => {
  const numbers = new Int32Array(4);
  readSync(orders, new Uint8Array(numbers.buffer), 0, 16, 0);
  return numbers[3] ?? 0;
};

const call = async (name: string, input: unknown, window = 'technician'): Promise<string> => {
  const reply = await core.call(name, input, window);
  if (reply.ok) return 'saved';
  const { code, data } = reply.error;
  return `${code} ${(data as { why?: string }).why ?? JSON.stringify(data)}`;
};

let count = 0;
const WORKS: Readonly<Record<string, () => Promise<string>>> = {
  reading: () => {
    count += 1;
    return call('visits.recordReading', {
      visitId,
      runId,
      stepKey: 'fill',
      itemKey: 'cold-pressure',
      quantity: 'systemPressureBarG',
      sample: 1,
      typedText: (0.8 + (count % 70) / 100).toFixed(2),
      typedUnit: 'bar',
      notMeasuredReason: null,
      instrumentId: null,
      measuredById: null,
    });
  },
  photo: async () => {
    count += 1;
    // What follows the end of a picture makes it another file, not another picture.
    const bytes = Buffer.concat([tinyPng('plate'), Buffer.from(`${process.pid} ${count} `.repeat(2000))]);
    const file = { bytes, mediaType: 'image/png', fileName: 'plate.png', takenAt: null };
    const reply = await core.putFile(file, 'technician');
    return reply.ok ? 'saved' : reply.code;
  },
  backup: () => {
    // Backups are named by the second.
    ahead += 1000;
    return call('backups.make', {}, 'owner');
  },
};

const rows = (): string => {
  const raw = new Database(storePath(dataFolder), { readonly: true });
  const sizes = ['readings', 'attachments', 'op'].map((table) =>
    raw.prepare(`SELECT count(*) FROM ${table}`).pluck().get(),
  );
  raw.close();
  return sizes.join(' ');
};
const halfFiles = () =>
  readdirSync(join(dataFolder, 'copies')).filter((name) => !/^\d{8}T\d{6}Z-[a-z-]+\.db$/.test(name));

for (const [window, who] of Object.entries({ technician: staffId, owner: ownerId })) {
  const signedIn = await call('session.signIn', { staffId: who, pin }, window);
  if (signedIn !== 'saved') throw new Error(signedIn);
}
for (const [what, work] of Object.entries(WORKS)) {
  for (const error of ['ENOSPC', 'EIO'] as const) {
    for (const once of error === 'EIO' ? [0, 1] : [0]) {
      // A backup writes hundreds of times: the later ones by steps.
      for (let left = 0; ; left += Math.max(1, Math.floor(left / FINENESS))) {
        const before = rows();
        order(constants.errno[error], left, once);
        const answer = await work();
        const times = struck();
        order(0, 0, 0);
        if (times === 0) break;
        const remains = answer === 'saved' || rows() === before ? [] : [`rows ${before} → ${rows()}`];
        const one: Struck = {
          what,
          error: once ? `${error} once` : error,
          call: left + 1,
          answer,
          left: [...remains, ...halfFiles()],
          afterwards: await work(),
        };
        process.stdout.write(`${JSON.stringify(one)}\n`);
      }
    }
  }
}
core.close();
