/** Ids made on the device: UUID version 7 (RFC 9562 §5.7), so that rows sort by the time they were made. */
import { randomFillSync } from 'node:crypto';

export function newId(nowMs: number): string {
  const bytes = randomFillSync(Buffer.alloc(16));
  bytes.writeUIntBE(nowMs, 0, 6);
  bytes[6] = 0x70 | ((bytes[6] ?? 0) & 0x0f);
  bytes[8] = 0x80 | ((bytes[8] ?? 0) & 0x3f);
  const hex = bytes.toString('hex');
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-${hex.slice(12, 16)}-${hex.slice(16, 20)}-${hex.slice(20)}`;
}
