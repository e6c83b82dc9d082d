/** Finds the unit somebody meant by what they typed after the number. Case, spaces, dots and look-alike marks do not count. */
import type { AmountKind } from './amountKind.ts';
import { ENTRY_UNITS, type EntryUnit, entryUnits } from './entryUnits.ts';
import type { Dimension, QuantityKey } from './quantities.ts';

export type UnitMatch =
  | { readonly kind: 'unit'; readonly unit: EntryUnit }
  /** Several meanings are in use, a thousandfold apart: ask. */
  | { readonly kind: 'ambiguous'; readonly meanings: readonly EntryUnit[] }
  | { readonly kind: 'of-another-kind'; readonly kinds: readonly (Dimension | 'absolute-pressure')[] }
  | { readonly kind: 'unknown' };

export function matchUnit(kind: AmountKind, text: string, defaultUnit: EntryUnit): UnitMatch {
  const wanted = plainUnit(text);
  if (wanted === '') return { kind: 'unit', unit: defaultUnit };
  const { units, dimension } = kind;
  if (wanted === '°') {
    if (dimension === 'temperature' || dimension === 'temperature-difference')
      return { kind: 'unit', unit: defaultUnit };
    const degrees = units.filter((unit) => unit.symbol.startsWith('°'));
    return degrees.length > 0 ? { kind: 'ambiguous', meanings: degrees } : { kind: 'unknown' };
  }
  if (dimension === 'power' && AMBIGUOUS_MBTU.test(wanted)) {
    const thousand = units.find((unit) => unit.symbol === 'MBH');
    return { kind: 'ambiguous', meanings: thousand ? [thousand, millionBtuPerHour(thousand)] : [] };
  }
  const meant = units.find((unit) => isSpelledAs(unit, wanted));
  if (meant) return { kind: 'unit', unit: meant };
  if (ABSOLUTE_PRESSURE.test(wanted)) return { kind: 'of-another-kind', kinds: ['absolute-pressure'] };
  const kinds = Object.entries(ENTRY_UNITS)
    .filter(([, list]) => list.some((unit) => isSpelledAs(unit, wanted)))
    .map(([kind]) => kind as Dimension);
  return kinds.length > 0 ? { kind: 'of-another-kind', kinds } : { kind: 'unknown' };
}

export function findUnitIn(units: readonly EntryUnit[], symbol: string): EntryUnit | undefined {
  const wanted = plainUnit(symbol);
  return units.find((unit) => isSpelledAs(unit, wanted));
}

/** Asked again and again for the few units in use. */
const found = new Map<string, EntryUnit | undefined>();

export function findUnit(key: QuantityKey, symbol: string): EntryUnit | undefined {
  const cacheKey = `${key}|${symbol}`;
  if (!found.has(cacheKey)) {
    if (found.size > MOST_REMEMBERED) found.clear();
    found.set(cacheKey, findUnitIn(entryUnits(key), symbol));
  }
  return found.get(cacheKey);
}

/** Symbols come from stored records and may be anything; the memory of them is bounded. */
const MOST_REMEMBERED = 2000;

/** The trade's M is a thousand, the engineer's a million: `MBtu` is written for both. */
const AMBIGUOUS_MBTU = /^mbtus?(\/?h)?$/;
const ABSOLUTE_PRESSURE = /^(psia|bara|kpaa|mbara|(psi|bar|kpa|mbar)abs(olute)?)$/;

function millionBtuPerHour(thousand: EntryUnit): EntryUnit {
  return {
    symbol: 'million Btu/h',
    spellings: [],
    toOwn: (typed) => thousand.toOwn(typed * 1000),
    fromOwn: (own) => thousand.fromOwn(own) / 1000,
  };
}

function isSpelledAs(unit: EntryUnit, wanted: string): boolean {
  return plainUnit(unit.symbol) === wanted || unit.spellings.some((spelling) => plainUnit(spelling) === wanted);
}

function plainUnit(text: string): string {
  return text
    .replace(/[º˚]/gu, '°')
    .replace(/[″“”]/gu, '"')
    .replace(/[′’]/gu, "'")
    .normalize('NFKC')
    .toLowerCase()
    .replace(/[µμ]/gu, 'u')
    .replace(/[\s.·⋅]/gu, '')
    .replace(/\/hr$/u, '/h')
    .replace(/^deg(rees)?(?=[cf]$)/u, '°');
}
