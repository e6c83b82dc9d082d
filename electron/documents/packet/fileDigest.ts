/**
 * A PDF's own digest, so that a changed page is noticed as well as a changed record: the SHA-256 of the whole file with
 * the digest's place filled with zeros stands in the document information. It shows a change; it keeps nobody from making
 * a new one.
 */
import { createHash } from 'node:crypto';

export const DIGEST_KEY = 'LightoffFileSha256';
export const DIGEST_PLACEHOLDER = '0'.repeat(64);

/** Fills the one placeholder of a file that was just made. */
export function stampFileDigest(file: Uint8Array): Uint8Array {
  const bytes = Buffer.from(file);
  const at = bytes.indexOf(`(${DIGEST_PLACEHOLDER})`, 0, 'latin1');
  if (at < 0) throw new Error('the file has no place for its digest');
  bytes.write(createHash('sha256').update(bytes).digest('hex'), at + 1, 'latin1');
  return new Uint8Array(bytes);
}

/** `absent`: the digest can't be found, as in a file that another program has written anew. */
export function checkFileDigest(file: Uint8Array, digest: string | null): 'same' | 'differs' | 'absent' {
  if (digest === null || !/^[0-9a-f]{64}$/.test(digest)) return 'absent';
  const bytes = Buffer.from(file);
  const at = bytes.indexOf(`(${digest})`, 0, 'latin1');
  if (at < 0) return 'absent';
  bytes.write(DIGEST_PLACEHOLDER, at + 1, 'latin1');
  return createHash('sha256').update(bytes).digest('hex') === digest ? 'same' : 'differs';
}
