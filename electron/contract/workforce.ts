/** When people work, where they set out, what else they can do, and how long the way takes: what a week is planned with. */
import { z } from 'zod';
import { STAFF_ROLES } from '../../domain/vocabulary/people.ts';
import { day, id, line, nothing, operation, optionalLine } from './operation.ts';

export const minuteOfDay = z.number().int().min(0).max(1440);
export const latitude = z.number().min(-90).max(90);
export const longitude = z.number().min(-180).max(180);
export const skill = z.string().trim().toLowerCase().min(1).max(60);

/** Minutes from local midnight; 24:00 as an end is 1440. */
export const workingHours = z.strictObject({
  /** As in ISO 8601: 1 is Monday. */
  weekday: z.number().int().min(1).max(7),
  fromMin: minuteOfDay,
  toMin: minuteOfDay,
  breakFromMin: minuteOfDay.nullable(),
  breakToMin: minuteOfDay.nullable(),
});

const absenceFields = {
  /** null: the whole firm is closed. */
  staffId: id.nullable(),
  fromOn: day,
  toOn: day,
  /** Both null: the whole of each day. */
  fromMin: minuteOfDay.nullable(),
  toMin: minuteOfDay.nullable(),
  reason: line,
};
export const absence = z.strictObject({ absenceId: id, ...absenceFields });
export type AbsenceRow = z.output<typeof absence>;

/** Where a day begins and ends; without coordinates no way can be reckoned. */
export const base = z.strictObject({
  street: optionalLine,
  postcode: optionalLine,
  city: optionalLine,
  latitude: latitude.nullable(),
  longitude: longitude.nullable(),
});

export const workforceMember = z.strictObject({
  staffId: id,
  name: z.string(),
  initials: z.string(),
  roles: z.array(z.enum(STAFF_ROLES)),
  activeFrom: day,
  activeTo: day.nullable(),
  hours: z.array(workingHours),
  skills: z.array(skill),
  base,
});
export type WorkforceMember = z.output<typeof workforceMember>;

export const travelSettings = z.strictObject({
  /** The firm's own place, for people without a base; null: not on the map. */
  latitude: latitude.nullable(),
  longitude: longitude.nullable(),
  /** null: the common-practice value. */
  roadFactor: z.number().min(1).max(3).nullable(),
  speedKmPerH: z.number().min(5).max(130).nullable(),
});

const reversed = z.strictObject({ weekday: z.number().int().nullable() });

export const workforceOperations = {
  /** Everybody with hours, base and skills, and every absence that touches the days asked for. */
  'workforce.get': operation({
    access: 'signed-in',
    input: z.strictObject({ from: day, to: day }),
    output: z.strictObject({ people: z.array(workforceMember), absences: z.array(absence) }),
  }),
  /** The whole week in one go; a weekday that is not named is free. */
  'staff.setHours': operation({
    access: ['owner', 'dispatcher'],
    input: z.strictObject({ staffId: id, hours: z.array(workingHours).max(7) }),
    output: nothing,
    errors: { 'hours-reversed': reversed, 'weekday-twice': z.strictObject({ weekday: z.number().int() }) },
  }),
  'staff.setBase': operation({
    access: ['owner', 'dispatcher'],
    input: z.strictObject({ staffId: id, base }),
    output: nothing,
  }),
  'staff.setSkills': operation({
    access: ['owner', 'dispatcher'],
    input: z.strictObject({ staffId: id, skills: z.array(skill).max(40) }),
    output: nothing,
  }),
  'absences.add': operation({
    access: ['owner', 'dispatcher'],
    input: z.strictObject(absenceFields),
    output: z.strictObject({ absenceId: id }),
    errors: { 'dates-reversed': z.strictObject({ fromOn: day, toOn: day }), 'hours-reversed': reversed },
  }),
  /** Taken back; the change log keeps it. */
  'absences.withdraw': operation({
    access: ['owner', 'dispatcher'],
    input: z.strictObject({ absenceId: id }),
    output: nothing,
  }),
  'company.getTravel': operation({ access: 'signed-in', input: nothing, output: travelSettings }),
  'company.setTravel': operation({ access: ['owner', 'dispatcher'], input: travelSettings, output: nothing }),
} as const;
