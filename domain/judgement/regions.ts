/** Which habits and rules count at a site. A jurisdiction nobody can place gets the strictest of all. */

export type Region = 'north-america' | 'britain-and-ireland' | 'europe' | 'unknown';

const BY_COUNTRY: Readonly<Record<string, Region>> = {
  ...Object.fromEntries(['US', 'USA', 'CA', 'CAN', 'MX'].map((country) => [country, 'north-america'] as const)),
  ...Object.fromEntries(
    ['GB', 'UK', 'IE', 'IM', 'JE', 'GG'].map((country) => [country, 'britain-and-ireland'] as const),
  ),
  ...Object.fromEntries(
    (
      'AD AL AT BA BE BG BY CH CY CZ DE DK EE ES EU FI FR GR HR HU IS IT LI LT LU LV MC MD ME MK MT NL NO PL PT RO RS ' +
      'SE SI SK SM TR UA VA XK'
    )
      .split(' ')
      .map((country) => [country, 'europe'] as const),
  ),
};

const BY_NAME: Readonly<Record<string, Region>> = {
  'north-america': 'north-america',
  europe: 'europe',
  'britain-and-ireland': 'britain-and-ireland',
};

/** Takes the names of the regions, and ISO 3166 codes with or without a part of the country: `DE`, `US-CO`, `gb`. */
export function regionOf(jurisdiction: string): Region {
  const plain = jurisdiction
    .trim()
    .toLowerCase()
    .replaceAll(/[\s_]+/g, '-');
  if (Object.hasOwn(BY_NAME, plain)) return BY_NAME[plain] ?? 'unknown';
  const country = plain.toUpperCase().split(/[-/]/)[0] ?? '';
  return Object.hasOwn(BY_COUNTRY, country) ? (BY_COUNTRY[country] ?? 'unknown') : 'unknown';
}
