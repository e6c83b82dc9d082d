/** A place as a way begins or ends there: where it is on the map, and under which names a table of travel times may have it. */
import { foldForSearch } from '../text/foldForSearch.ts';
import type { Coordinates } from './travel.ts';

export type WayPlace = {
  readonly at: Coordinates | null;
  /** Folded, the most particular first: address, postcode, town. */
  readonly names: readonly string[];
};

export type Address = {
  readonly street: string | null;
  readonly postcode: string | null;
  readonly city: string | null;
  readonly latitude: number | null;
  readonly longitude: number | null;
};

export function wayPlaceOf(address: Address): WayPlace {
  return { at: coordinatesOf(address), names: namesOf(address) };
}

/** Where somebody's day begins: under their own name, at their base; what is not known of it is the firm's. */
export function baseWayPlace(personName: string, base: Address, firm: Address): WayPlace {
  const own = namesOf(base);
  return {
    at: coordinatesOf(base) ?? coordinatesOf(firm),
    names: [foldForSearch(personName), ...(own.length > 0 ? own : namesOf(firm))],
  };
}

export function namesOf({ street, postcode, city }: Omit<Address, 'latitude' | 'longitude'>): readonly string[] {
  const address = street === null ? [] : [[street, city].filter((part) => part !== null).join(' ')];
  return [...address, ...[postcode, city].filter((part) => part !== null)]
    .map(foldForSearch)
    .filter((name) => name !== '');
}

function coordinatesOf({ latitude, longitude }: Pick<Address, 'latitude' | 'longitude'>): Coordinates | null {
  return latitude === null || longitude === null ? null : { latitude, longitude };
}
