/** Where two texts of a record differ, leaf by leaf: what somebody changed after it was sealed. */
import { pointerPart } from './commitment.ts';

export type RecordDifference = { readonly path: string; readonly was: string | null; readonly isNow: string | null };

/** More than these are one cause: another record altogether. */
const MOST = 20;

/** A text that is no JSON differs as a whole. */
export function recordDifferences(sealed: string, found: string): readonly RecordDifference[] {
  if (sealed === found) return [];
  const before = leavesOf(sealed);
  const after = leavesOf(found);
  if (before === null || after === null) return [{ path: '/', was: null, isNow: null }];
  const paths = new Set([...before.keys(), ...after.keys()]);
  return [...paths]
    .filter((path) => before.get(path) !== after.get(path))
    .slice(0, MOST)
    .map((path) => ({ path, was: before.get(path) ?? null, isNow: after.get(path) ?? null }));
}

function leavesOf(text: string): ReadonlyMap<string, string> | null {
  try {
    const found = new Map<string, string>();
    collect(JSON.parse(text), '', found);
    return found;
  } catch {
    return null;
  }
}

function collect(value: unknown, path: string, found: Map<string, string>): void {
  if (typeof value !== 'object' || value === null) {
    found.set(path, String(value));
    return;
  }
  for (const [key, inner] of Object.entries(value)) collect(inner, `${path}/${pointerPart(key)}`, found);
}
