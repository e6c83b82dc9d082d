/** An address on one line, as far as it is known; null when nothing is. */
import { countryName } from '../kit/places.ts';

export type AddressLike = {
  readonly street: string | null;
  readonly postcode: string | null;
  readonly city: string | null;
  readonly region: string | null;
  readonly country: string | null;
};

export function addressWords(address: AddressLike): string | null {
  const town = [address.postcode, address.city].filter(Boolean).join(' ');
  const country = address.country === null ? null : countryName(address.country);
  const parts = [address.street, town, address.region, country].filter((part) => part !== null && part !== '');
  // A country alone is the form's default, not an address.
  return address.street === null && town === '' ? null : parts.join(', ');
}
