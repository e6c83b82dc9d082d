/** The firm's people with their licences and training, and the instruments with their calibration dates. */
import { z } from 'zod';
import { exportMapping } from '../../domain/intake/exportMapping.ts';
import { fuel } from '../../domain/procedure/modelSheet.ts';
import { QUANTITY_KEYS } from '../../domain/quantity/quantities.ts';
import { INSTRUMENT_KINDS, STAFF_ROLES } from '../../domain/vocabulary/people.ts';
import { pin } from './app.ts';
import { day, id, line, nothing, operation, optionalLine } from './operation.ts';

export const licence = z.strictObject({
  licenceId: id,
  number: line,
  issuer: line,
  place: line,
  licenceClass: line,
  fuel: fuel.nullable(),
  maxKw: z.number().positive().nullable(),
  validFrom: day,
  validTo: day,
  /** Why it ended early. */
  endReason: optionalLine,
});
export type Licence = z.output<typeof licence>;

export const training = z.strictObject({
  trainingId: id,
  maker: line,
  modelLine: line,
  number: optionalLine,
  validFrom: day,
  validTo: day.nullable(),
  endReason: optionalLine,
});
export type Training = z.output<typeof training>;

export const staffMember = z.strictObject({
  staffId: id,
  name: line,
  initials: line,
  phone: optionalLine,
  email: z.email().nullable(),
  roles: z.array(z.enum(STAFF_ROLES)),
  activeFrom: day,
  activeTo: day.nullable(),
  licences: z.array(licence),
  trainings: z.array(training),
  /** Withdrawn as typed by mistake: they count for nothing and can be put back. */
  withdrawn: z.strictObject({ licences: z.array(licence), trainings: z.array(training) }),
});
export type StaffMember = z.output<typeof staffMember>;

const staffFields = {
  name: line,
  initials: line,
  phone: optionalLine,
  email: z.email().nullable(),
  roles: z.array(z.enum(STAFF_ROLES)).min(1),
};

const accuracy = z.partialRecord(
  z.enum(QUANTITY_KEYS as [string, ...string[]]),
  z.strictObject({ abs: z.number().nonnegative(), relPct: z.number().nonnegative() }),
);
const rangeMax = z.partialRecord(z.enum(QUANTITY_KEYS as [string, ...string[]]), z.number());

export const instrument = z.strictObject({
  instrumentId: id,
  kind: z.enum(INSTRUMENT_KINDS),
  label: line,
  serial: line,
  accuracy,
  rangeMax,
  keptById: id.nullable(),
  retiredOn: day.nullable(),
  endReason: optionalLine,
  /** The latest calibration made by today. */
  calibrationId: id.nullable(),
  calibratedOn: day.nullable(),
  dueOn: day.nullable(),
  certificate: optionalLine,
  /** Files of that calibration. */
  certificateIds: z.array(id),
  isInDate: z.boolean(),
});
export type Instrument = z.output<typeof instrument>;

/** Data sheet or certificate, as files. */
const paperIds = z.array(id).max(10).default([]);

export const peopleOperations = {
  'staff.list': operation({ access: 'signed-in', input: nothing, output: z.array(staffMember) }),
  'staff.create': operation({
    access: ['owner', 'dispatcher'],
    input: z.strictObject({ ...staffFields, pin }),
    output: z.strictObject({ staffId: id }),
  }),
  'staff.update': operation({
    access: ['owner', 'dispatcher'],
    input: z.strictObject({ staffId: id, ...staffFields, activeTo: day.nullable() }),
    output: nothing,
    errors: { 'last-owner': nothing },
  }),
  'staff.setPin': operation({ access: ['owner'], input: z.strictObject({ staffId: id, pin }), output: nothing }),
  'staff.addLicence': operation({
    access: ['owner', 'dispatcher'],
    input: z.strictObject({ staffId: id, licence: licence.omit({ licenceId: true, endReason: true }) }),
    output: z.strictObject({ licenceId: id }),
    errors: { 'dates-reversed': z.strictObject({ validFrom: day, validTo: day }) },
  }),
  'staff.addTraining': operation({
    access: ['owner', 'dispatcher'],
    input: z.strictObject({ staffId: id, training: training.omit({ trainingId: true, endReason: true }) }),
    output: z.strictObject({ trainingId: id }),
    errors: { 'dates-reversed': z.strictObject({ validFrom: day, validTo: day }) },
  }),
  'instruments.list': operation({ access: 'signed-in', input: nothing, output: z.array(instrument) }),
  /** What an instrument can read is taken from its papers: a technician adds them, the office answers for itself. */
  'instruments.create': operation({
    access: ['owner', 'dispatcher', 'technician'],
    input: z.strictObject({
      kind: z.enum(INSTRUMENT_KINDS),
      label: line,
      serial: line,
      accuracy,
      rangeMax,
      keptById: id.nullable(),
      paperIds,
    }),
    output: z.strictObject({ instrumentId: id }),
    errors: { 'papers-missing': nothing },
  }),
  /** What the columns of its export mean; null: nobody has said yet. */
  'instruments.getMapping': operation({
    access: 'signed-in',
    input: z.strictObject({ instrumentId: id }),
    output: z.strictObject({ mapping: exportMapping.nullable() }),
  }),
  'instruments.keepMapping': operation({
    access: ['technician', 'helper', 'owner'],
    input: z.strictObject({ instrumentId: id, mapping: exportMapping }),
    output: nothing,
  }),
  'instruments.addCalibration': operation({
    access: ['owner', 'dispatcher', 'technician'],
    input: z.strictObject({ instrumentId: id, calibratedOn: day, dueOn: day, certificate: optionalLine, paperIds }),
    output: nothing,
    errors: {
      'dates-reversed': z.strictObject({ calibratedOn: day, dueOn: day }),
      'day-in-future': nothing,
      'papers-missing': nothing,
    },
  }),
} as const;
