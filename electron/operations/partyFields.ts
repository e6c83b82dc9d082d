/** A party as typed, made ready for the store: phone in its international form beside what was typed, and the folded search text. */
import { type CountryCode, isSupportedCountry, parsePhoneNumberFromString } from 'libphonenumber-js';
import type { parties } from '../../db/schema/index.ts';
import { foldForSearch } from '../../domain/text/foldForSearch.ts';
import type { PartyFields } from '../contract/parties.ts';

export function toPartyRow(fields: PartyFields, companyCountry: string) {
  const phoneE164 = toE164(fields.phoneTyped, fields.country ?? companyCountry);
  return {
    ...fields,
    phoneE164,
    searchText: foldForSearch(
      [
        fields.name,
        fields.contactName,
        fields.street,
        fields.postcode,
        fields.city,
        fields.phoneTyped,
        phoneE164,
        fields.email,
      ]
        .filter(Boolean)
        .join(' '),
    ),
  };
}

/** What somebody typed of a party, without what the store keeps beside it. */
export function partyFieldsOf(row: typeof parties.$inferSelect): PartyFields {
  const { id: _id, phoneE164: _phoneE164, searchText: _searchText, erasedAt: _erasedAt, kind, language, ...rest } = row;
  return { ...rest, kind: kind as PartyFields['kind'], language: language as PartyFields['language'] };
}

function toE164(typed: string | null, country: string): string | null {
  if (typed === null) return null;
  const region: CountryCode | undefined = isSupportedCountry(country) ? country : undefined;
  const parsed = region === undefined ? parsePhoneNumberFromString(typed) : parsePhoneNumberFromString(typed, region);
  return parsed?.isPossible() ? parsed.number : null;
}
