/** May this person do gas work on that appliance on that day? Judged by the licence as it stood on the day, never today. */
import type { FuelKey } from '../procedure/modelSheet.ts';
import { foldForSearch } from '../text/foldForSearch.ts';
import { countryCodeOf } from '../vocabulary/countries.ts';
import { REGION_CODES, type RegionCode, regionCodeOf } from '../vocabulary/regions.ts';

export type HeldLicence = {
  /** null: every fuel. */
  readonly fuel: FuelKey | null;
  /** Largest appliance, kW; null: no size line. */
  readonly maxKw: number | null;
  readonly validFrom: string;
  readonly validTo: string;
  /** Where it counts, in the words of the office; null or left out: not known. */
  readonly place?: string | null;
};

/** `rating-unknown`: the licence has an upper limit, and nobody knows on which side of it the appliance is. */
export const LICENCE_PROBLEMS = [
  'no-licence',
  'not-valid-on-day',
  'other-fuel',
  'too-large',
  'rating-unknown',
] as const;
export type LicenceProblem = (typeof LICENCE_PROBLEMS)[number];

/** With the rating unknown somebody may go there and read the plate; the burner alone waits for it. */
export function keepsFromWork(problem: LicenceProblem | null): problem is Exclude<LicenceProblem, 'rating-unknown'> {
  return problem !== null && problem !== 'rating-unknown';
}

/** null: some licence covers it. Otherwise the problem of the one that comes nearest. */
export function findLicenceProblem(
  licences: readonly HeldLicence[],
  work: { readonly on: string; readonly fuel: FuelKey | null; readonly ratedInputKw: number | null },
): LicenceProblem | null {
  if (licences.length === 0) return 'no-licence';
  const valid = licences.filter((one) => one.validFrom <= work.on && work.on <= one.validTo);
  if (valid.length === 0) return 'not-valid-on-day';
  const forFuel = valid.filter((one) => one.fuel === null || work.fuel === null || one.fuel === work.fuel);
  if (forFuel.length === 0) return 'other-fuel';
  if (forFuel.some((one) => one.maxKw === null)) return null;
  const { ratedInputKw } = work;
  if (ratedInputKw === null) return 'rating-unknown';
  return forFuel.some((one) => one.maxKw !== null && ratedInputKw <= one.maxKw) ? null : 'too-large';
}

/**
 * Where the licences count that would cover the work, when none of them may count where the site is. It compares and never
 * concludes: it is for somebody to ask, and forbids nothing. A licence for a whole country counts in all of it. Empty: one of
 * them names the site's state, province or country, none covers the work, or nothing can be said of a place on either side (a
 * county, a state of a country whose states are not in the list, unknown).
 */
export function licencePlacesElsewhere(
  licences: readonly HeldLicence[],
  work: {
    readonly on: string;
    readonly fuel: FuelKey | null;
    readonly ratedInputKw: number | null;
    readonly region: string | null;
    /** ISO 3166-1; null: not known. */
    readonly country: string | null;
  },
): readonly string[] {
  const places = licences
    .filter((one) => !keepsFromWork(findLicenceProblem([one], work)))
    .map(({ place }) => (place ?? '').trim());
  if (!places.every((place) => isElsewhere(place, work))) return [];
  const keys = places.map((place) => regionCodeOf(place) ?? foldForSearch(place));
  return places.filter((_place, at) => keys.indexOf(keys[at] ?? '') === at);
}

/** Surely another state, province or country than the site's. */
function isElsewhere(
  place: string,
  site: { readonly region: string | null; readonly country: string | null },
): boolean {
  if (place === '' || foldForSearch(place) === foldForSearch(site.region ?? '')) return false;
  const named = regionCodeOf(site.region);
  // `WA` is a state of Australia as well: of the list only where the site's country is not another.
  const region = named !== null && (site.country === null || isIn(named, site.country)) ? named : null;
  const country = site.country ?? (region === null ? null : region.slice(0, 2));
  if (country === null || countryCodeOf(place) === country) return false;
  const code = regionCodeOf(place);
  if (code === null) return countryCodeOf(place) !== null;
  if (isIn(code, country)) return region !== null && code !== region;
  // Two letters alone may be the site's own country's word for one of its states, where those are not in the list.
  return place.length > 2 || REGION_CODES.some((one) => isIn(one, country));
}

function isIn(region: RegionCode, country: string): boolean {
  return region.startsWith(`${country}-`);
}
