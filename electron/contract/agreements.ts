/** Service agreements: an interval of the customer's own, written and ended. */
import { z } from 'zod';
import { day, id, nothing, operation, optionalLine } from './operation.ts';

/** Nobody agrees on a service less than every five years. */
export const LONGEST_INTERVAL_MONTHS = 60;

export const agreementFields = z.strictObject({
  /** With whom. */
  partyId: id,
  number: optionalLine,
  everyMonths: z.number().int().min(1).max(LONGEST_INTERVAL_MONTHS),
  fromOn: day,
  /** The last day it is in force; null: until somebody ends it. */
  toOn: day.nullable(),
});
export type AgreementFields = z.output<typeof agreementFields>;

const overlaps = z.strictObject({ fromOn: day, toOn: day.nullable() });
const outOfOrder = z.strictObject({ earlier: z.string(), later: z.string() });

export const agreementOperations = {
  /** Newest first; and with whom one can be made: the customer and the people at the site and the appliance now. */
  'agreements.list': operation({
    access: 'signed-in',
    input: z.strictObject({ applianceId: id }),
    output: z.strictObject({
      agreements: z.array(agreementFields.extend({ agreementId: id, partyName: z.string() })),
      parties: z.array(z.strictObject({ partyId: id, name: z.string() })),
    }),
  }),
  'agreements.write': operation({
    access: ['dispatcher', 'owner'],
    input: z.strictObject({ applianceId: id, agreement: agreementFields }),
    output: z.strictObject({ agreementId: id }),
    errors: { 'days-out-of-order': outOfOrder, 'agreement-overlaps': overlaps },
  }),
  /** Services due after the last day are not owed by it any more; an end set wrong is set again. */
  'agreements.end': operation({
    access: ['dispatcher', 'owner'],
    input: z.strictObject({ agreementId: id, toOn: day }),
    output: nothing,
    errors: { 'days-out-of-order': outOfOrder, 'agreement-overlaps': overlaps },
  }),
} as const;
