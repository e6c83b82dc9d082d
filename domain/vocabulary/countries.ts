/** Names that countries go by in lists and on licences, folded as they are compared; a country not in it is known by its code alone. */
import { foldForSearch } from '../text/foldForSearch.ts';

/** By ISO 3166-1 code. */
export const COUNTRY_NAMES = {
  CA: ['canada'],
  US: ['usa', 'united states', 'united states of america', 'etats unis', 'estados unidos'],
  GB: ['uk', 'united kingdom', 'great britain', 'england', 'scotland', 'wales'],
  IE: ['ireland'],
  FR: ['france', 'francia'],
  BE: ['belgium', 'belgique', 'belgica'],
  CH: ['switzerland', 'suisse', 'suiza'],
  DE: ['germany', 'allemagne', 'alemania'],
  ES: ['spain', 'espagne', 'espana'],
  MX: ['mexico', 'mexique'],
  NL: ['netherlands', 'pays bas', 'paises bajos'],
  IT: ['italy', 'italie', 'italia'],
  PT: ['portugal'],
  AU: ['australia', 'australie'],
  NZ: ['new zealand', 'nouvelle zelande'],
} as const;

const CODE_OF = new Map<string, string>(
  Object.entries(COUNTRY_NAMES).flatMap(([code, names]) =>
    [code, ...names].map((name) => [foldForSearch(name), code] as const),
  ),
);

/** `Canada` and `ca` are `CA`; null: no country of the list. */
export function countryCodeOf(words: string): string | null {
  return CODE_OF.get(foldForSearch(words)) ?? null;
}
