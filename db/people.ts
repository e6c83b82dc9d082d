/** Queries over the firm: company, staff with roles, licences and training, instruments with their calibrations. */
import { and, asc, desc, eq, isNotNull, isNull, sql } from 'drizzle-orm';
import type { ReadableDb } from './openStore.ts';
import { preparedOnce } from './preparedOnce.ts';
import {
  calibrations,
  companies,
  instrumentMappings,
  instruments,
  licences,
  staff,
  staffRoles,
  trainings,
} from './schema/index.ts';

export type CompanyRow = typeof companies.$inferSelect;
export type StaffRow = typeof staff.$inferSelect;
export type LicenceRow = typeof licences.$inferSelect;
export type TrainingRow = typeof trainings.$inferSelect;
export type InstrumentRow = typeof instruments.$inferSelect & {
  readonly calibrations: readonly (typeof calibrations.$inferSelect)[];
};

export function findCompany(db: ReadableDb): CompanyRow | undefined {
  return db.select().from(companies).get();
}

export function listStaff(db: ReadableDb): readonly (StaffRow & { readonly roles: readonly string[] })[] {
  const roles = Map.groupBy(db.select().from(staffRoles).all(), (row) => row.staffId);
  return db
    .select()
    .from(staff)
    .orderBy(asc(staff.name))
    .all()
    .map((row) => ({ ...row, roles: (roles.get(row.id) ?? []).map((one) => one.role).sort() }));
}

export function listRoleRows(db: ReadableDb, staffId: string): readonly (typeof staffRoles.$inferSelect)[] {
  return db.select().from(staffRoles).where(eq(staffRoles.staffId, staffId)).all();
}

const staffById = preparedOnce((db) =>
  db
    .select()
    .from(staff)
    .where(eq(staff.id, sql.placeholder('id')))
    .prepare(),
);
const rolesByStaff = preparedOnce((db) =>
  db
    .select({ role: staffRoles.role })
    .from(staffRoles)
    .where(eq(staffRoles.staffId, sql.placeholder('id')))
    .prepare(),
);

export function findStaff(
  db: ReadableDb,
  staffId: string,
): (StaffRow & { readonly roles: readonly string[] }) | undefined {
  const row = staffById(db).get({ id: staffId });
  if (row === undefined) return undefined;
  const roles = rolesByStaff(db).all({ id: staffId });
  return { ...row, roles: roles.map((one) => one.role).sort() };
}

/** Those that count: what was withdrawn never was. */
export function listLicences(db: ReadableDb): readonly LicenceRow[] {
  return db.select().from(licences).where(isNull(licences.withdrawnAt)).orderBy(desc(licences.validTo)).all();
}

export function listLicencesOf(db: ReadableDb, staffId: string): readonly LicenceRow[] {
  return db
    .select()
    .from(licences)
    .where(and(eq(licences.staffId, staffId), isNull(licences.withdrawnAt)))
    .orderBy(desc(licences.validTo))
    .all();
}

export function listWithdrawnLicences(db: ReadableDb): readonly LicenceRow[] {
  return db.select().from(licences).where(isNotNull(licences.withdrawnAt)).orderBy(desc(licences.validTo)).all();
}

export function findLicence(db: ReadableDb, licenceId: string): LicenceRow | undefined {
  return db.select().from(licences).where(eq(licences.id, licenceId)).get();
}

/** Those that count. */
export function listTrainings(db: ReadableDb): readonly TrainingRow[] {
  return db.select().from(trainings).where(isNull(trainings.withdrawnAt)).orderBy(desc(trainings.validFrom)).all();
}

export function listWithdrawnTrainings(db: ReadableDb): readonly TrainingRow[] {
  return db.select().from(trainings).where(isNotNull(trainings.withdrawnAt)).orderBy(desc(trainings.validFrom)).all();
}

export function findTraining(db: ReadableDb, trainingId: string): TrainingRow | undefined {
  return db.select().from(trainings).where(eq(trainings.id, trainingId)).get();
}

export function findCalibration(db: ReadableDb, calibrationId: string): typeof calibrations.$inferSelect | undefined {
  return db.select().from(calibrations).where(eq(calibrations.id, calibrationId)).get();
}

/** Each with the calibrations that nobody has withdrawn, oldest first: which one counts depends on the day asked about. */
export function listInstruments(db: ReadableDb): readonly InstrumentRow[] {
  const byInstrument = Map.groupBy(
    db
      .select()
      .from(calibrations)
      .where(isNull(calibrations.withdrawnAt))
      .orderBy(asc(calibrations.calibratedOn), sql`rowid`)
      .all(),
    (row) => row.instrumentId,
  );
  return db
    .select()
    .from(instruments)
    .orderBy(asc(instruments.label))
    .all()
    .map((row) => ({ ...row, calibrations: byInstrument.get(row.id) ?? [] }));
}

const instrumentById = preparedOnce((db) =>
  db
    .select({ id: instruments.id })
    .from(instruments)
    .where(eq(instruments.id, sql.placeholder('id')))
    .prepare(),
);

export function findMapping(db: ReadableDb, instrumentId: string): typeof instrumentMappings.$inferSelect | undefined {
  return db.select().from(instrumentMappings).where(eq(instrumentMappings.instrumentId, instrumentId)).get();
}

export function isInstrument(db: ReadableDb, instrumentId: string): boolean {
  return instrumentById(db).get({ id: instrumentId }) !== undefined;
}
