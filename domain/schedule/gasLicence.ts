/** May this person do gas work on that appliance on that day? Judged by the licence as it stood on the day, never today. */
import type { FuelKey } from '../procedure/modelSheet.ts';
import { foldForSearch } from '../text/foldForSearch.ts';

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
 * Where the licences count that would cover the work, when none of them names the site's own state or province. Both are free
 * words, so this compares and never concludes: it is for somebody to ask, and forbids nothing. Empty: one of them names it, none
 * covers the work, or a place is not known on either side.
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
  const region = foldForSearch(work.region ?? '').trim();
  if (region === '') return [];
  const places = licences
    .filter((one) => findLicenceProblem([one], work) === null)
    .map(({ place }) => (place ?? '').trim());
  if (places.some((place) => place === '' || foldForSearch(place) === region)) return [];
  return [...new Set(places)];
}
