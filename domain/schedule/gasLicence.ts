/** May this person do gas work on that appliance on that day? Judged by the licence as it stood on the day, never today. */
import type { FuelKey } from '../procedure/modelSheet.ts';

export type HeldLicence = {
  /** null: every fuel. */
  readonly fuel: FuelKey | null;
  /** Largest appliance, kW; null: no size line. */
  readonly maxKw: number | null;
  readonly validFrom: string;
  readonly validTo: string;
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
