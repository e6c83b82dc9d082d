/**
 * A licence or training put right, ended early or withdrawn. A record sealed before keeps what it said then; what was on
 * file before is in the change log.
 */
import { z } from 'zod';
import { day, id, line, nothing, operation } from './operation.ts';
import { licence, training } from './people.ts';

const office = ['owner', 'dispatcher'] as const;
const reversed = { 'dates-reversed': z.strictObject({ validFrom: day, validTo: day }) } as const;
/** The last day lies outside what is on file: a later end is a correction, an earlier one a withdrawal. */
const outside = { 'day-not-between': z.strictObject({ validFrom: day, validTo: day.nullable() }) } as const;

export const credentialOperations = {
  'staff.correctLicence': operation({
    access: office,
    input: z.strictObject({ licenceId: id, licence: licence.omit({ licenceId: true, endReason: true }) }),
    output: nothing,
    errors: reversed,
  }),
  /** Suspended, revoked, given up: it counts up to this day and no further. */
  'staff.endLicence': operation({
    access: office,
    input: z.strictObject({ licenceId: id, lastDay: day, why: line }),
    output: nothing,
    errors: outside,
  }),
  /** It never was: of another person, typed twice. It counts for no day at all. */
  'staff.withdrawLicence': operation({
    access: office,
    input: z.strictObject({ licenceId: id, why: line }),
    output: nothing,
  }),
  'staff.putBackLicence': operation({ access: office, input: z.strictObject({ licenceId: id }), output: nothing }),
  'staff.correctTraining': operation({
    access: office,
    input: z.strictObject({ trainingId: id, training: training.omit({ trainingId: true, endReason: true }) }),
    output: nothing,
    errors: reversed,
  }),
  'staff.endTraining': operation({
    access: office,
    input: z.strictObject({ trainingId: id, lastDay: day, why: line }),
    output: nothing,
    errors: outside,
  }),
  'staff.withdrawTraining': operation({
    access: office,
    input: z.strictObject({ trainingId: id, why: line }),
    output: nothing,
  }),
  'staff.putBackTraining': operation({ access: office, input: z.strictObject({ trainingId: id }), output: nothing }),
} as const;
