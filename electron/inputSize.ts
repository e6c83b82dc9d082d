/**
 * Whether what came through a port is within the input limit. Structured clone carries cycles, maps and dates, which no
 * operation takes: the walk counts as JSON would and stops at the limit, so it ends on a cycle too.
 */

const bytesPerValue = 8;

export function isWithinInputLimit(input: unknown, limitBytes: number): boolean {
  let bytes = 0;
  const waiting: unknown[] = [input];
  while (waiting.length > 0) {
    const value = waiting.pop();
    bytes += sizeOfOne(value);
    if (bytes > limitBytes) return false;
    if (Array.isArray(value)) {
      if (bytes + value.length * bytesPerValue > limitBytes) return false;
      for (const item of value) waiting.push(item);
    } else if (value instanceof Map) {
      for (const entry of value) waiting.push(...entry);
    } else if (value instanceof Set) {
      for (const item of value) waiting.push(item);
    } else if (typeof value === 'object' && value !== null && !ArrayBuffer.isView(value)) {
      for (const [key, item] of Object.entries(value)) {
        bytes += 2 * key.length;
        waiting.push(item);
      }
    }
  }
  return true;
}

function sizeOfOne(value: unknown): number {
  if (typeof value === 'string') return bytesPerValue + 2 * value.length;
  if (ArrayBuffer.isView(value) || value instanceof ArrayBuffer) return bytesPerValue + value.byteLength;
  return bytesPerValue;
}
