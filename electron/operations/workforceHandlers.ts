/** Hours, absences, bases, skills and travel: kept with the people, read by the board and the planner. */
import type { ReadableDb } from '../../db/openStore.ts';
import { findCompany, listStaff } from '../../db/people.ts';
import { absences, companies, staff, staffSkills, workingHours } from '../../db/schema/index.ts';
import {
  type AbsenceRecord,
  findAbsence,
  listAbsences,
  listHoursOf,
  listStaffSkills,
  listWorkingHours,
} from '../../db/workforce.ts';
import type { StaffRole } from '../../domain/vocabulary/people.ts';
import type { AbsenceRow, WorkforceMember } from '../contract/workforce.ts';
import { fail, type Handlers, notFound } from './handler.ts';
import { requireStaff } from './requireStaff.ts';

export const workforceHandlers: Handlers<
  | 'workforce.get'
  | 'staff.setHours'
  | 'staff.setBase'
  | 'staff.setSkills'
  | 'absences.add'
  | 'absences.withdraw'
  | 'company.getTravel'
  | 'company.setTravel'
> = {
  'workforce.get': (input, context) => ({
    people: [...readWorkforce(context.db)],
    absences: listAbsences(context.db, input).map(toAbsence),
  }),

  'staff.setHours': (input, context) => {
    requireStaff(context.db, input.staffId);
    for (const [index, one] of input.hours.entries()) {
      const { weekday } = one;
      if (!isInOrder(one)) return fail('hours-reversed', { weekday });
      if (input.hours.findIndex((other) => other.weekday === weekday) !== index)
        return fail('weekday-twice', { weekday });
    }
    context.write((writer) => {
      const current = listHoursOf(writer.db, input.staffId);
      for (const row of current)
        if (!input.hours.some((one) => one.weekday === row.weekday)) writer.remove(workingHours, row.id);
      for (const one of input.hours) {
        const row = current.find((other) => other.weekday === one.weekday);
        if (row === undefined) writer.insert(workingHours, { staffId: input.staffId, ...one });
        else writer.update(workingHours, row.id, one);
      }
    });
    context.services.changed(['people']);
    return {};
  },

  'staff.setBase': (input, context) => {
    requireStaff(context.db, input.staffId);
    const { street, postcode, city, latitude, longitude } = input.base;
    context.write((writer) =>
      writer.update(staff, input.staffId, {
        baseStreet: street,
        basePostcode: postcode,
        baseCity: city,
        baseLatitude: latitude,
        baseLongitude: longitude,
      }),
    );
    context.services.changed(['people']);
    return {};
  },

  'staff.setSkills': (input, context) => {
    requireStaff(context.db, input.staffId);
    const wanted = new Set(input.skills);
    context.write((writer) => {
      const current = listStaffSkills(writer.db).filter((row) => row.staffId === input.staffId);
      for (const row of current) if (!wanted.has(row.skill)) writer.remove(staffSkills, row.id);
      for (const skill of wanted)
        if (!current.some((row) => row.skill === skill)) writer.insert(staffSkills, { staffId: input.staffId, skill });
    });
    context.services.changed(['people']);
    return {};
  },

  'absences.add': (input, context) => {
    if (input.staffId !== null) requireStaff(context.db, input.staffId);
    const { fromOn, toOn, fromMin, toMin } = input;
    if (toOn < fromOn) return fail('dates-reversed', { fromOn, toOn });
    if ((fromMin === null) !== (toMin === null) || (fromMin !== null && toMin !== null && toMin <= fromMin))
      return fail('hours-reversed', { weekday: null });
    const absenceId = context.write((writer) => writer.insert(absences, input));
    context.services.changed(['people']);
    return { absenceId };
  },

  'absences.withdraw': (input, context) => {
    if (findAbsence(context.db, input.absenceId) === undefined) return notFound('absences', input.absenceId);
    context.write((writer) => writer.update(absences, input.absenceId, { withdrawnAt: context.now }));
    context.services.changed(['people']);
    return {};
  },

  'company.getTravel': (_input, context) => {
    const company = findCompany(context.db) ?? notFound('companies', 'this');
    return {
      latitude: company.latitude,
      longitude: company.longitude,
      roadFactor: company.travelRoadFactor,
      speedKmPerH: company.travelSpeedKmPerH,
    };
  },

  'company.setTravel': (input, context) => {
    const company = findCompany(context.db) ?? notFound('companies', 'this');
    const { roadFactor, speedKmPerH, ...place } = input;
    context.write((writer) =>
      writer.update(companies, company.id, {
        ...place,
        travelRoadFactor: roadFactor,
        travelSpeedKmPerH: speedKmPerH,
      }),
    );
    context.services.changed(['app']);
    return {};
  },
};

/** Everybody on file, with hours, skills and base. */
export function readWorkforce(db: ReadableDb): readonly WorkforceMember[] {
  const hours = Map.groupBy(listWorkingHours(db), (row) => row.staffId);
  const skills = Map.groupBy(listStaffSkills(db), (row) => row.staffId);
  return listStaff(db).map((row) => ({
    staffId: row.id,
    name: row.name,
    initials: row.initials,
    roles: row.roles as StaffRole[],
    activeFrom: row.activeFrom,
    activeTo: row.activeTo,
    hours: (hours.get(row.id) ?? []).map(({ id: _id, staffId: _staffId, ...rest }) => rest),
    skills: (skills.get(row.id) ?? []).map((one) => one.skill),
    base: {
      street: row.baseStreet,
      postcode: row.basePostcode,
      city: row.baseCity,
      latitude: row.baseLatitude,
      longitude: row.baseLongitude,
    },
  }));
}

export function toAbsence({ id, withdrawnAt: _withdrawnAt, ...row }: AbsenceRecord): AbsenceRow {
  return { absenceId: id, ...row };
}

type Times = WorkforceMember['hours'][number];

function isInOrder({ fromMin, toMin, breakFromMin, breakToMin }: Times): boolean {
  if (toMin <= fromMin) return false;
  if (breakFromMin === null || breakToMin === null) return breakFromMin === breakToMin;
  return fromMin <= breakFromMin && breakFromMin < breakToMin && breakToMin <= toMin;
}
