/** Service agreements: an interval of the customer's own, written, put right and ended. */
import { z } from 'zod';
import { day, id, nothing, operation } from './operation.ts';

/** Nobody agrees on a service less than every five years. */
export const LONGEST_INTERVAL_MONTHS = 60;

export const agreementFields = z.strictObject({
  /** With whom. */
  partyId: id,
  /** Short enough to stand in the reason of a booking. */
  number: z.string().trim().max(60).nullable(),
  everyMonths: z.number().int().min(1).max(LONGEST_INTERVAL_MONTHS),
  fromOn: day,
  /** The last day it is in force; null: until somebody ends it. */
  toOn: day.nullable(),
});

const overlaps = z.strictObject({ fromOn: day, toOn: day.nullable() });
const outOfOrder = z.strictObject({ earlier: z.string(), later: z.string() });
/** Neither the customer nor anybody with a part in the site or the appliance. */
const notThere = z.strictObject({ name: z.string() });
const refusals = { 'days-out-of-order': outOfOrder, 'agreement-overlaps': overlaps, 'party-not-there': notThere };

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
    errors: refusals,
  }),
  /** What was written wrong is put right; the change log keeps what stood there. */
  'agreements.update': operation({
    access: ['dispatcher', 'owner'],
    input: z.strictObject({ agreementId: id, agreement: agreementFields }),
    output: nothing,
    errors: refusals,
  }),
  /** Services due after the last day are not owed by it any more. null: it goes on after all. */
  'agreements.end': operation({
    access: ['dispatcher', 'owner'],
    input: z.strictObject({ agreementId: id, toOn: day.nullable() }),
    output: nothing,
    errors: { 'days-out-of-order': outOfOrder, 'agreement-overlaps': overlaps },
  }),
} as const;
