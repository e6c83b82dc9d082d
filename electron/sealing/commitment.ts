/**
 * A personal value inside a sealed record: the record holds only a salted hash, the value and its salt are kept beside it.
 * Erasing a person deletes value and salt; the record and its hash stay as they were, and nobody can guess the value back.
 */
import { z } from 'zod';
import { sha256Hex } from './canonicalJson.ts';

const sha256Text = z.string().regex(/^[0-9a-f]{64}$/, 'SHA-256 as 64 lower-case hexadecimal digits');

export const commitment = z.strictObject({ commitment: sha256Text });
export type Commitment = z.output<typeof commitment>;

/** At least 128 bits: what is behind a commitment is often a name or a phone number, and those can be tried through. */
const salt = z.string().regex(/^[0-9a-f]{32,128}$/, '16 to 64 random bytes as hexadecimal digits');

/** Value and salt are null once the person has been erased. */
export const disclosure = z.strictObject({
  /** Where in the record, as a JSON pointer (RFC 6901). */
  path: z.string().startsWith('/'),
  salt: salt.nullable(),
  value: z.string().nullable(),
  /** Whom it is about; null: the firm's own people, or free words about the work. */
  partyId: z.string().nullable(),
});
export type Disclosure = z.output<typeof disclosure>;

/** Salt and path hold no line feed, so the three parts cannot run into each other. */
export function commitTo(saltText: string, path: string, value: string): Commitment {
  if (!salt.safeParse(saltText).success) throw new Error('a salt is at least 16 random bytes in hexadecimal digits');
  return { commitment: sha256Hex(`${saltText}\n${path}\n${value}`) };
}

/** Every commitment of a record by its path. */
export function listCommitments(record: unknown): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  collect(record, '', found);
  return found;
}

function collect(value: unknown, path: string, found: Map<string, string>): void {
  if (typeof value !== 'object' || value === null) return;
  if (isCommitment(value)) {
    found.set(path, value.commitment);
    return;
  }
  for (const [key, item] of Object.entries(value)) collect(item, `${path}/${pointerPart(key)}`, found);
}

export function isCommitment(value: object): value is Commitment {
  return 'commitment' in value && typeof value.commitment === 'string';
}

/** RFC 6901: a tilde and a slash inside a key are escaped. */
export function pointerPart(key: string): string {
  return key.replaceAll('~', '~0').replaceAll('/', '~1');
}
