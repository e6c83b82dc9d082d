/** May this person do gas work on that appliance on that day? Judged by the licence as it stood on the day, never today. */
import type { FuelKey } from '../procedure/modelSheet.ts';
import { type RegionCode, regionCodeOf } from '../vocabulary/regions.ts';

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

export type LicenceProblem = 'no-licence' | 'not-valid-on-day' | 'other-fuel' | 'too-large';

/** null: some licence covers it. Otherwise the problem of the one that comes nearest. An unknown rating is not refused. */
export function findLicenceProblem(
  licences: readonly HeldLicence[],
  work: { readonly on: string; readonly fuel: FuelKey | null; readonly ratedInputKw: number | null },
): LicenceProblem | null {
  if (licences.length === 0) return 'no-licence';
  const valid = licences.filter((one) => one.validFrom <= work.on && work.on <= one.validTo);
  if (valid.length === 0) return 'not-valid-on-day';
  const forFuel = valid.filter((one) => one.fuel === null || work.fuel === null || one.fuel === work.fuel);
  if (forFuel.length === 0) return 'other-fuel';
  const { ratedInputKw } = work;
  return forFuel.some((one) => one.maxKw === null || ratedInputKw === null || ratedInputKw <= one.maxKw)
    ? null
    : 'too-large';
}

/**
 * Where the licences count that would cover the work, when none of them names the site's own state or province. It compares and
 * never concludes: it is for somebody to ask, and forbids nothing. Empty: one of them names it, none covers the work, or a place
 * on either side is no state or province of the list (a country, a county, unknown).
 */
export function licencePlacesElsewhere(
  licences: readonly HeldLicence[],
  work: {
    readonly on: string;
    readonly fuel: FuelKey | null;
    readonly ratedInputKw: number | null;
    readonly region: string | null;
  },
): readonly string[] {
  const region = regionCodeOf(work.region);
  if (region === null) return [];
  const places = licences
    .filter((one) => findLicenceProblem([one], work) === null)
    .map(({ place }) => (place ?? '').trim());
  const codes = places.map((place) => placeCodeOf(place, region));
  if (codes.some((code) => code === null || code === region)) return [];
  return places.filter((_place, at) => codes.indexOf(codes[at] ?? null) === at);
}

/** `CA` beside a site in Canada is the country as likely as California. */
function placeCodeOf(place: string, siteRegion: RegionCode): RegionCode | null {
  const code = regionCodeOf(place);
  return siteRegion.startsWith('CA-') && /^ca$/i.test(place) ? null : code;
}
