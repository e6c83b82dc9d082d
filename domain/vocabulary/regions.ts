/**
 * The states of the United States and the provinces and territories of Canada, so that a code and a name are known for the same
 * place. Codes: ISO 3166-2. Other countries are not in the list, and nothing is concluded about what is not.
 */
import { foldForSearch } from '../text/foldForSearch.ts';

const REGIONS = [
  ['US-AL', 'Alabama'],
  ['US-AK', 'Alaska'],
  ['US-AZ', 'Arizona'],
  ['US-AR', 'Arkansas'],
  ['US-CA', 'California'],
  ['US-CO', 'Colorado'],
  ['US-CT', 'Connecticut'],
  ['US-DE', 'Delaware'],
  ['US-DC', 'District of Columbia'],
  ['US-FL', 'Florida'],
  ['US-GA', 'Georgia'],
  ['US-HI', 'Hawaii'],
  ['US-ID', 'Idaho'],
  ['US-IL', 'Illinois'],
  ['US-IN', 'Indiana'],
  ['US-IA', 'Iowa'],
  ['US-KS', 'Kansas'],
  ['US-KY', 'Kentucky'],
  ['US-LA', 'Louisiana'],
  ['US-ME', 'Maine'],
  ['US-MD', 'Maryland'],
  ['US-MA', 'Massachusetts'],
  ['US-MI', 'Michigan'],
  ['US-MN', 'Minnesota'],
  ['US-MS', 'Mississippi'],
  ['US-MO', 'Missouri'],
  ['US-MT', 'Montana'],
  ['US-NE', 'Nebraska'],
  ['US-NV', 'Nevada'],
  ['US-NH', 'New Hampshire'],
  ['US-NJ', 'New Jersey'],
  ['US-NM', 'New Mexico'],
  ['US-NY', 'New York'],
  ['US-NC', 'North Carolina'],
  ['US-ND', 'North Dakota'],
  ['US-OH', 'Ohio'],
  ['US-OK', 'Oklahoma'],
  ['US-OR', 'Oregon'],
  ['US-PA', 'Pennsylvania'],
  ['US-RI', 'Rhode Island'],
  ['US-SC', 'South Carolina'],
  ['US-SD', 'South Dakota'],
  ['US-TN', 'Tennessee'],
  ['US-TX', 'Texas'],
  ['US-UT', 'Utah'],
  ['US-VT', 'Vermont'],
  ['US-VA', 'Virginia'],
  ['US-WA', 'Washington'],
  ['US-WV', 'West Virginia'],
  ['US-WI', 'Wisconsin'],
  ['US-WY', 'Wyoming'],
  ['CA-AB', 'Alberta'],
  ['CA-BC', 'British Columbia'],
  ['CA-MB', 'Manitoba'],
  ['CA-NB', 'New Brunswick'],
  ['CA-NL', 'Newfoundland and Labrador'],
  ['CA-NS', 'Nova Scotia'],
  ['CA-NT', 'Northwest Territories'],
  ['CA-NU', 'Nunavut'],
  ['CA-ON', 'Ontario'],
  ['CA-PE', 'Prince Edward Island'],
  ['CA-QC', 'Quebec'],
  ['CA-SK', 'Saskatchewan'],
  ['CA-YT', 'Yukon'],
] as const;

export type RegionCode = (typeof REGIONS)[number][0];

export const REGION_CODES: readonly RegionCode[] = REGIONS.map(([code]) => code);

/** By code with or without its country, and by name. */
const CODE_OF = new Map<string, RegionCode>(
  REGIONS.flatMap(([code, name]) => [code, code.slice(3), name].map((word) => [foldForSearch(word), code] as const)),
);

/** `NS`, `CA-NS` and `Nova Scotia` are `CA-NS`; null: not in the list, a country or a county perhaps, or nothing. */
export function regionCodeOf(words: string | null): RegionCode | null {
  return CODE_OF.get(foldForSearch(words ?? '')) ?? null;
}
