/** Two entries that may be one customer or site. Only ever suggested; nothing is merged by itself. */
import { foldForSearch } from '../../text/foldForSearch.ts';

export type PartyEntry = {
  readonly name: string;
  readonly phones: readonly string[];
  readonly street: string;
  readonly houseNumber: string;
  readonly postcode: string;
};

export type PartyLikeness = {
  readonly code: 'duplicate-party';
  readonly because: readonly ('same-name' | 'same-phone' | 'same-address')[];
};

/** null: nothing suggests that they are one. Name alone is not enough: there is more than one Smith. */
export function similarParties(one: PartyEntry, other: PartyEntry): PartyLikeness | null {
  const because: PartyLikeness['because'][number][] = [];
  if (isSameName(one.name, other.name)) because.push('same-name');
  if (one.phones.some((phone) => other.phones.some((another) => isSamePhone(phone, another))))
    because.push('same-phone');
  if (isSameAddress(one, other)) because.push('same-address');
  return because.length >= 2 || because.includes('same-phone') ? { code: 'duplicate-party', because } : null;
}

/** Titles and forms of a firm; what is left in any order is the name. */
const NOT_PART_OF_A_NAME = new Set(
  'mr mrs ms dr herr frau familie family fam co ltd limited inc llc gmbh and und the'.split(' '),
);

function isSameName(one: string, other: string): boolean {
  const [words, others] = [nameWords(one), nameWords(other)];
  return words.length > 0 && words.join(' ') === others.join(' ');
}

function nameWords(name: string): readonly string[] {
  return foldForSearch(name.replaceAll('&', ' ').replaceAll('.', ' '))
    .split(' ')
    .filter((word) => word !== '' && !NOT_PART_OF_A_NAME.has(word))
    .toSorted();
}

/** National numbers differ in trunk prefix and country code: the last digits are what is dialled. */
const COMPARED_DIGITS = 8;

function isSamePhone(one: string, other: string): boolean {
  const [digits, others] = [one.replaceAll(/\D/g, ''), other.replaceAll(/\D/g, '')];
  return digits.length >= COMPARED_DIGITS && digits.slice(-COMPARED_DIGITS) === others.slice(-COMPARED_DIGITS);
}

function isSameAddress(one: PartyEntry, other: PartyEntry): boolean {
  const [number, otherNumber] = [plain(one.houseNumber), plain(other.houseNumber)];
  const [code, otherCode] = [plain(one.postcode), plain(other.postcode)];
  if (number === '' || number !== otherNumber || code === '' || code !== otherCode) return false;
  const [street, otherStreet] = [streetKey(one.street), streetKey(other.street)];
  return street !== '' && (street === otherStreet || isOneSlipApart(street, otherStreet));
}

function plain(text: string): string {
  return foldForSearch(text).replaceAll(' ', '');
}

/** Ways of writing one word; longest first. */
const STREET_WORDS: readonly (readonly [RegExp, string])[] = [
  [/stra(ss|ß)e$|str$/, 'st'],
  [/^(street|str|strasse)$/, 'st'],
  [/^(road)$/, 'rd'],
  [/^(avenue|av)$/, 'ave'],
  [/^(lane)$/, 'ln'],
  [/^(drive)$/, 'dr'],
  [/^(saint|sankt|sainte)$/, 'st'],
  [/^(north)$/, 'n'],
  [/^(south)$/, 's'],
  [/^(east)$/, 'e'],
  [/^(west)$/, 'w'],
];

function streetKey(street: string): string {
  return foldForSearch(street)
    .split(' ')
    .map((word) => STREET_WORDS.reduce((short, [long, abbreviation]) => short.replace(long, abbreviation), word))
    .join('');
}

/** A letter too many, too few, wrong, or two exchanged; in short names one slip makes another name. */
const SHORTEST_FOR_SLIPS = 6;

function isOneSlipApart(one: string, other: string): boolean {
  if (Math.min(one.length, other.length) < SHORTEST_FOR_SLIPS || Math.abs(one.length - other.length) > 1) return false;
  let start = 0;
  while (start < one.length && one[start] === other[start]) start += 1;
  const [rest, otherRest] = [one.slice(start), other.slice(start)];
  const isExchanged = rest[0] === otherRest[1] && rest[1] === otherRest[0] && rest.slice(2) === otherRest.slice(2);
  return (
    isExchanged || rest.slice(1) === otherRest.slice(1) || rest.slice(1) === otherRest || rest === otherRest.slice(1)
  );
}
