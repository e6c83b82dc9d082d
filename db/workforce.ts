/** Queries over what planning needs of the people: hours, absences, skills and the analysers they can take along. */
import { and, asc, eq, gte, isNull, lte } from 'drizzle-orm';
import type { ReadableDb } from './openStore.ts';
import { absences, staffSkills, workingHours } from './schema/index.ts';

export type WorkingHoursRow = typeof workingHours.$inferSelect;
export type AbsenceRecord = typeof absences.$inferSelect;

export function listWorkingHours(db: ReadableDb): readonly WorkingHoursRow[] {
  return db.select().from(workingHours).orderBy(asc(workingHours.staffId), asc(workingHours.weekday)).all();
}

export function listHoursOf(db: ReadableDb, staffId: string): readonly WorkingHoursRow[] {
  return db.select().from(workingHours).where(eq(workingHours.staffId, staffId)).all();
}

export function listStaffSkills(db: ReadableDb): readonly (typeof staffSkills.$inferSelect)[] {
  return db.select().from(staffSkills).orderBy(asc(staffSkills.skill)).all();
}

/** Those that touch the days from `from` to `to` and were not taken back. */
export function listAbsences(
  db: ReadableDb,
  { from, to }: { readonly from: string; readonly to: string },
): readonly AbsenceRecord[] {
  return db
    .select()
    .from(absences)
    .where(and(isNull(absences.withdrawnAt), lte(absences.fromOn, to), gte(absences.toOn, from)))
    .orderBy(asc(absences.fromOn))
    .all();
}

export function findAbsence(db: ReadableDb, absenceId: string): AbsenceRecord | undefined {
  return db.select().from(absences).where(eq(absences.id, absenceId)).get();
}
