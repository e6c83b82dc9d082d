/**
 * The one text a record has (RFC 8785): what is hashed, stored and handed out. The hash is of exactly these bytes.
 *
 * Source   RFC 8785, JSON Canonicalization Scheme
 * Checked  tests/electron/sealing/canonicalJson.test.ts, against Appendix B and section 3.2.3
 */
import { createHash } from 'node:crypto';
import canonicalize from 'canonicalize';

/** Throws for what JSON cannot say (NaN, infinity, a lone surrogate, a function, a missing value): such a record is a bug. */
export function canonicalJson(value: unknown): string {
  assertPlain(value, '');
  const text = canonicalize(value);
  if (text === undefined) throw new Error('nothing to write');
  return text;
}

export function sealHash(canonical: string): string {
  return sha256Hex(canonical);
}

/** Of text the UTF-8 bytes count. */
export function sha256Hex(content: string | Uint8Array): string {
  return createHash('sha256').update(content).digest('hex');
}

/** The serializer drops what it cannot write; in a record nothing may vanish. */
function assertPlain(value: unknown, path: string): void {
  if (value === null || typeof value === 'boolean' || typeof value === 'string') return;
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) throw new Error(`${path || '/'} is not a finite number: ${value}`);
    return;
  }
  if (Array.isArray(value)) {
    for (const [index, item] of value.entries()) assertPlain(item, `${path}/${index}`);
    return;
  }
  if (typeof value === 'object') {
    const prototype: unknown = Object.getPrototypeOf(value);
    if (prototype === Object.prototype || prototype === null) {
      for (const [key, item] of Object.entries(value)) assertPlain(item, `${path}/${key}`);
      return;
    }
  }
  throw new Error(`${path || '/'} is no JSON value: ${typeof value}`);
}
