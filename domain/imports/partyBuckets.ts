/** Looks up who may be the same person or firm among many, without comparing each with each. Only ever suggests. */
import { type PartyEntry, similarParties } from '../judgement/mistakes/similarParties.ts';
import { foldForSearch } from '../text/foldForSearch.ts';

export type KnownParty<K> = {
  readonly key: K;
  readonly name: string;
  readonly phone: string | null;
  readonly email: string | null;
  readonly street: string | null;
  readonly postcode: string | null;
};

export type Likeness = 'same-name' | 'same-phone' | 'same-address' | 'same-email';

export type PartyBuckets<K> = {
  readonly add: (party: KnownParty<K>) => void;
  readonly alike: (
    party: Omit<KnownParty<K>, 'key'>,
  ) => readonly { readonly party: KnownParty<K>; readonly because: readonly Likeness[] }[];
};

/** Whoever is alike shares the last digits of a phone, an e-mail address or the words of the name: see `similarParties`. */
export function partyBuckets<K>(): PartyBuckets<K> {
  const buckets = new Map<string, KnownParty<K>[]>();
  return {
    add(party) {
      for (const bucket of bucketsOf(party)) {
        const list = buckets.get(bucket);
        if (list === undefined) buckets.set(bucket, [party]);
        else list.push(party);
      }
    },
    alike(party) {
      const near = new Set(bucketsOf(party).flatMap((bucket) => (buckets.get(bucket) ?? []).slice(0, MOST_COMPARED)));
      return [...near].flatMap((other) => {
        const because: Likeness[] = [...(similarParties(entryOf(party), entryOf(other))?.because ?? [])];
        if (party.email !== null && party.email.toLowerCase() === other.email?.toLowerCase())
          because.push('same-email');
        return because.length === 0 ? [] : [{ party: other, because }];
      });
    },
  };
}

/** A list with the office's own phone number in every row would make each row like each other. */
const MOST_COMPARED = 20;
const COMPARED_DIGITS = 8;

function bucketsOf(party: Omit<KnownParty<unknown>, 'key'>): readonly string[] {
  const digits = (party.phone ?? '').replaceAll(/\D/gu, '');
  const words = foldForSearch(party.name).split(' ').filter(Boolean).toSorted().join(' ');
  return [
    ...(words === '' ? [] : [`name ${words}`]),
    ...(digits.length < COMPARED_DIGITS ? [] : [`phone ${digits.slice(-COMPARED_DIGITS)}`]),
    ...(party.email === null ? [] : [`e-mail ${party.email.toLowerCase()}`]),
  ];
}

function entryOf(party: Omit<KnownParty<unknown>, 'key'>): PartyEntry {
  const [, number = '', street = ''] = /^\s*(\d+\w?)?\s*(.*)$/u.exec(party.street ?? '') ?? [];
  const trailing = /^(.*\D)\s(\d+\w?)$/u.exec(street);
  return {
    name: party.name,
    phones: party.phone === null ? [] : [party.phone],
    street: number === '' ? (trailing?.[1] ?? street) : street,
    houseNumber: number === '' ? (trailing?.[2] ?? '') : number,
    postcode: party.postcode ?? '',
  };
}
