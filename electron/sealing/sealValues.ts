/** Turns plain values into the form they are sealed in: numbers into decimals, personal values into commitments. */
import { type Commitment, commitTo, type Disclosure, pointerPart } from './commitment.ts';
import { toDecimalText } from './decimalText.ts';

const personalMark: unique symbol = Symbol('personal');

export type Personal = { readonly [personalMark]: { readonly value: string; readonly partyId: string | null } };

/** Marks a value as somebody's own. Nothing stays nothing: that there is no phone number is not personal. */
export function personal(value: string | null, partyId: string | null): Personal | null {
  return value === null || value === '' ? null : { [personalMark]: { value, partyId } };
}

export type Sealed<T> = T extends Personal
  ? Commitment
  : T extends number
    ? string
    : T extends string | boolean | null
      ? T
      : T extends readonly (infer Item)[]
        ? Sealed<Item>[]
        : { -readonly [K in keyof T]: Sealed<T[K]> };

/** `newSalt` gives fresh random bytes as hexadecimal digits each time. */
export function sealValues(
  value: unknown,
  newSalt: () => string,
): { readonly sealed: unknown; readonly disclosures: readonly Disclosure[] } {
  const disclosures: Disclosure[] = [];
  const sealed = walk(value, '', (path, own) => {
    const salt = newSalt();
    disclosures.push({ path, salt, value: own.value, partyId: own.partyId });
    return commitTo(salt, path, own.value);
  });
  return { sealed, disclosures };
}

type Commit = (path: string, own: { readonly value: string; readonly partyId: string | null }) => Commitment;

function walk(value: unknown, path: string, commit: Commit): unknown {
  if (typeof value === 'number') return toDecimalText(value);
  if (typeof value !== 'object' || value === null) return value;
  if (Array.isArray(value)) return value.map((item, index) => walk(item, `${path}/${index}`, commit));
  if (isPersonal(value)) return commit(path, value[personalMark]);
  const entries = Object.entries(value)
    .filter(([, item]) => item !== undefined)
    .map(([key, item]) => [key, walk(item, `${path}/${pointerPart(key)}`, commit)] as const);
  return Object.fromEntries(entries);
}

function isPersonal(value: object): value is Personal {
  return personalMark in value;
}
