/** Whether a serial falls under a recall: same letters in front, and its number inside the range, both ends included. */

export function serialInRange(serial: string, from: string, to: string): boolean {
  const [one, low, high] = [split(serial), split(from), split(to)];
  if (one === null || low === null || high === null) return false;
  if (one.prefix !== low.prefix || low.prefix !== high.prefix) return false;
  return one.number >= low.number && one.number <= high.number;
}

function split(serial: string): { readonly prefix: string; readonly number: bigint } | null {
  const parts = /^(.*?)(\d+)$/.exec(serial.toUpperCase().replaceAll(/[^A-Z0-9]/g, ''));
  return parts ? { prefix: parts[1] ?? '', number: BigInt(parts[2] ?? '0') } : null;
}
