/** A record with its personal values put back in, as far as they have not been erased. */
import { type Commitment, type Disclosure, isCommitment, pointerPart } from './commitment.ts';

/** Stands where a person's data was erased; the record still vouches for what was there. */
export const ERASED = '(erased)';

export type Revealed<T> = T extends Commitment
  ? string
  : T extends readonly (infer Item)[]
    ? readonly Revealed<Item>[]
    : T extends object
      ? { readonly [K in keyof T]: Revealed<T[K]> }
      : T;

export function revealRecord<T extends object>(record: T, disclosures: readonly Disclosure[]): Revealed<T> {
  const values = new Map(disclosures.map((one) => [one.path, one.value ?? ERASED]));
  return walk(record, '', values) as Revealed<T>;
}

function walk(value: unknown, path: string, values: ReadonlyMap<string, string>): unknown {
  if (typeof value !== 'object' || value === null) return value;
  if (isCommitment(value)) return values.get(path) ?? ERASED;
  if (Array.isArray(value)) return value.map((item, index) => walk(item, `${path}/${index}`, values));
  return Object.fromEntries(
    Object.entries(value).map(([key, item]) => [key, walk(item, `${path}/${pointerPart(key)}`, values)]),
  );
}
