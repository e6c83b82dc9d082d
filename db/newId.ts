/** Ids made on the device: UUID version 7 (RFC 9562 §5.7), so that rows sort by the time they were made. */
import { randomFillSync } from 'node:crypto';

/** Drawn a thousand ids at a time: a call for each costs more than all the rest. */
const pool = Buffer.alloc(16_000);
let poolAt = pool.length;

export function newId(nowMs: number): string {
  if (poolAt >= pool.length) {
    randomFillSync(pool);
    poolAt = 0;
  }
  const bytes = pool.subarray(poolAt, poolAt + 16);
  poolAt += 16;
  bytes.writeUIntBE(nowMs, 0, 6);
  bytes[6] = 0x70 | ((bytes[6] ?? 0) & 0x0f);
  bytes[8] = 0x80 | ((bytes[8] ?? 0) & 0x3f);
  const hex = bytes.toString('hex');
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-${hex.slice(12, 16)}-${hex.slice(16, 20)}-${hex.slice(20)}`;
}
