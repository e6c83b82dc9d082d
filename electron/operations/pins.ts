/** PINs are kept only as a salted scrypt hash; comparing takes the same time whatever was typed. */
import { randomBytes, scryptSync, timingSafeEqual } from 'node:crypto';

const KEY_BYTES = 32;
/** OWASP's smallest recommended scrypt cost with 16 MiB: a PIN is short, so the hash must be slow. */
const COST = { N: 2 ** 14, r: 8, p: 5, maxmem: 64 * 1024 * 1024 };

export function hashPin(pin: string): string {
  const salt = randomBytes(16);
  return `scrypt$${salt.toString('base64')}$${scryptSync(pin, salt, KEY_BYTES, COST).toString('base64')}`;
}

export function isPin(pin: string, stored: string | null): boolean {
  const [kind, salt, key] = (stored ?? '').split('$');
  if (kind !== 'scrypt' || salt === undefined || key === undefined) return false;
  const expected = Buffer.from(key, 'base64');
  return timingSafeEqual(scryptSync(pin, Buffer.from(salt, 'base64'), expected.length, COST), expected);
}
