/** PINs are kept only as a salted scrypt hash with its cost; comparing takes the same time whatever was typed. */
import { randomBytes, scryptSync, timingSafeEqual } from 'node:crypto';
import { PIN_COST } from './pinCost.ts';

type Cost = typeof PIN_COST;

const KEY_BYTES = 32;
/** Of hashes that do not say it. */
const FIRST_COST: Cost = { N: 2 ** 14, r: 8, p: 5 };

export function hashPin(pin: string): string {
  const salt = randomBytes(16);
  const { N, r, p } = PIN_COST;
  return `scrypt$${N},${r},${p}$${salt.toString('base64')}$${derive(pin, salt, KEY_BYTES, PIN_COST).toString('base64')}`;
}

export function isPin(pin: string, stored: string | null): boolean {
  const [kind, ...rest] = (stored ?? '').split('$');
  const [salt, key] = rest.slice(-2);
  if (kind !== 'scrypt' || salt === undefined || key === undefined) return false;
  const expected = Buffer.from(key, 'base64');
  const cost = rest.length === 3 ? readCost(rest[0] ?? '') : FIRST_COST;
  return timingSafeEqual(derive(pin, Buffer.from(salt, 'base64'), expected.length, cost), expected);
}

function derive(pin: string, salt: Buffer, byteLength: number, cost: Cost): Buffer {
  return scryptSync(pin, salt, byteLength, { ...cost, maxmem: 64 * 1024 * 1024 });
}

function readCost(text: string): Cost {
  const [N = 0, r = 0, p = 0] = text.split(',').map(Number);
  return { N, r, p };
}
