/** Licence checks, here and not in screens: as of the visit's day, for the fuel and size of the appliance. */
import { findAppliance, findFuelStateOn } from '../../db/appliances.ts';
import type { ReadableDb } from '../../db/openStore.ts';
import { findStaff, listLicencesOf, listStaff } from '../../db/people.ts';
import type { FuelKey } from '../../domain/procedure/modelSheet.ts';
import { plateRatingKw } from '../../domain/procedure/plateRating.ts';
import type { ProgressPerson } from '../../domain/procedure/progressTypes.ts';
import type { RunRecord } from '../../domain/procedure/runRecord.ts';
import {
  findLicenceProblem,
  type HeldLicence,
  keepsFromWork,
  type LicenceProblem,
} from '../../domain/schedule/gasLicence.ts';
import { fail } from './handler.ts';

export type GasWork = { readonly on: string; readonly fuel: FuelKey | null; readonly ratedInputKw: number | null };

export function licenceProblemOf(db: ReadableDb, staffId: string, work: GasWork): LicenceProblem | null {
  return findLicenceProblem(listLicencesOf(db, staffId) as readonly HeldLicence[], work);
}

export function requireLicence(db: ReadableDb, staffId: string, work: GasWork): void {
  const why = licenceProblemOf(db, staffId, work);
  if (why !== null) refuse(db, staffId, why, work.on);
}

/** For what comes before the burner is lit: a licence with an upper limit will do until the plate's rating was read. */
export function requireLicenceBeforeFiring(db: ReadableDb, staffId: string, work: GasWork): void {
  const why = licenceProblemOf(db, staffId, work);
  if (keepsFromWork(why)) refuse(db, staffId, why, work.on);
}

function refuse(db: ReadableDb, staffId: string, why: LicenceProblem, on: string): never {
  return fail('needs-licence', { staffId, name: findStaff(db, staffId)?.name ?? '', why, on });
}

export function gasWorkOf(record: Pick<RunRecord, 'fuel' | 'appliance' | 'readings'>, on: string): GasWork {
  return { on, fuel: record.fuel, ratedInputKw: plateRatingKw(record) };
}

/** Of an appliance outside any run: the fuel it was set to by that day, else its plate's. */
export function gasWorkOn(db: ReadableDb, applianceId: string, on: string): GasWork {
  const appliance = findAppliance(db, applianceId);
  const fuel = findFuelStateOn(db, applianceId, on)?.fuel ?? appliance?.plateFuel ?? null;
  return { on, fuel: fuel as FuelKey | null, ratedInputKw: appliance?.ratedInputKw ?? null };
}

/** Everybody who may appear in a run, with whether they may do its gas work on that day. */
export function listRunPeople(
  db: ReadableDb,
  record: Pick<RunRecord, 'fuel' | 'appliance' | 'readings'>,
  on: string,
): readonly Required<ProgressPerson>[] {
  const work = gasWorkOf(record, on);
  return listStaff(db).map((row) => {
    const why = licenceProblemOf(db, row.id, work);
    return {
      staffId: row.id,
      name: row.name,
      isLicensed: !keepsFromWork(why),
      waitsForRating: why === 'rating-unknown',
    };
  });
}
