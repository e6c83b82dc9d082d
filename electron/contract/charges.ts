/** Whether a job is charged, and where: prices and invoices themselves are the accounting's. */
import { z } from 'zod';
import { day, id, nothing, operation, optionalLine } from './operation.ts';

const charge = z.strictObject({
  isChargeable: z.boolean(),
  /** Why not, or what about it. */
  reason: optionalLine,
  outsideInvoiceNumber: optionalLine,
  outsideInvoiceOn: day.nullable(),
});
export type Charge = z.output<typeof charge>;

export const chargeOperations = {
  'jobs.getCharge': operation({ access: 'signed-in', input: z.strictObject({ jobId: id }), output: charge }),
  'jobs.setCharge': operation({
    access: ['dispatcher', 'owner', 'technician'],
    input: z.strictObject({ jobId: id, charge }),
    output: nothing,
    errors: {
      /** Work that is not charged says why. */
      'reason-missing': nothing,
      'invoice-number-missing': nothing,
    },
  }),
} as const;
