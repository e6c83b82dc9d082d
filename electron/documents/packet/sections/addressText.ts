/** An address in one line, in the order of its country. */
type Address = {
  readonly street: string | null;
  readonly postcode: string | null;
  readonly city: string | null;
  readonly region: string | null;
  readonly country: string | null;
};

/** Countries where the postcode stands after the town. */
const POSTCODE_LAST = new Set(['US', 'CA', 'GB', 'IE', 'AU', 'NZ']);

export function addressText(address: Address): string {
  const { street, postcode, city, region, country } = address;
  const isLast = country !== null && POSTCODE_LAST.has(country);
  const regionAndCode = [region, postcode].filter(isThere).join(' ');
  const town = isLast ? [city, regionAndCode] : [[postcode, city].filter(isThere).join(' '), region];
  const parts = [street, ...town, country].filter(isThere);
  return parts.length === 0 ? 'not on record' : parts.join(', ');
}

function isThere(part: string | null): part is string {
  return part !== null && part !== '';
}
