/**
 * Ids made on the device: UUID version 7 (RFC 9562 §5.7), so that rows sort by the time they were made. Within one
 * millisecond each is the one before plus one (§6.2, method 2): a long write then only appends to its indexes.
 */
import { randomFillSync } from 'node:crypto';

const bytes = Buffer.alloc(16);
let bytesMs = Number.NaN;
/** The last 32 random bits are counted up; drawn below half of what fits, they never run over. */
const COUNTED_AT = 12;

export function newId(nowMs: number): string {
  if (nowMs === bytesMs) bytes.writeUInt32BE(bytes.readUInt32BE(COUNTED_AT) + 1, COUNTED_AT);
  else draw(nowMs);
  const hex = bytes.toString('hex');
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-${hex.slice(12, 16)}-${hex.slice(16, 20)}-${hex.slice(20)}`;
}

function draw(nowMs: number): void {
  randomFillSync(bytes);
  bytes.writeUIntBE(nowMs, 0, 6);
  bytes[6] = 0x70 | ((bytes[6] ?? 0) & 0x0f);
  bytes[8] = 0x80 | ((bytes[8] ?? 0) & 0x3f);
  bytes[COUNTED_AT] = (bytes[COUNTED_AT] ?? 0) & 0x7f;
  bytesMs = nowMs;
}
