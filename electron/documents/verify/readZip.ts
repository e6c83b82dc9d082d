/** Unpacks a ZIP somebody hands in, with limits on what it may hold: it may be made to fill memory or to pass one name for another. */
import { unzipSync } from 'fflate';
import { err, ok, type Result } from '../../../domain/result.ts';

export type ZipProblem =
  | { readonly code: 'not-a-zip' }
  | { readonly code: 'zip-too-large' }
  | { readonly code: 'zip-name-refused'; readonly name: string };

const MOST_ENTRIES = 10_000;
const MOST_BYTES = 500 * 1024 * 1024;
const HIGHEST_RATIO = 100;

export function readZip(bytes: Uint8Array): Result<ReadonlyMap<string, Uint8Array>, ZipProblem> {
  const seen = new Set<string>();
  let total = 0;
  let refused: ZipProblem | null = null;
  try {
    const files = unzipSync(bytes, {
      filter: ({ name, size, originalSize }) => {
        total += originalSize;
        const isTooLarge =
          seen.size >= MOST_ENTRIES || total > MOST_BYTES || originalSize > HIGHEST_RATIO * Math.max(size, 1024);
        if (isTooLarge) refused ??= { code: 'zip-too-large' };
        if (!isPlainName(name) || seen.has(name)) refused ??= { code: 'zip-name-refused', name };
        seen.add(name);
        return refused === null;
      },
    });
    return refused === null ? ok(new Map(Object.entries(files))) : err(refused);
  } catch {
    return err({ code: 'not-a-zip' });
  }
}

/** A plain relative path in lower case: nothing that another system could read as a place outside, a device or a drive. */
function isPlainName(name: string): boolean {
  return /^[a-z0-9][a-z0-9.-]*(\/[a-z0-9][a-z0-9.-]*)*$/u.test(name) && !name.includes('..');
}
