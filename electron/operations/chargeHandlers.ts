/** Chargeable or not with a reason, and the number and day of the invoice that the accounting wrote. */
import { jobs } from '../../db/schema/index.ts';
import { findJob } from '../../db/visits.ts';
import { fail, type Handlers, notFound } from './handler.ts';

export const chargeHandlers: Handlers<'jobs.getCharge' | 'jobs.setCharge'> = {
  'jobs.getCharge': ({ jobId }, context) => {
    const job = findJob(context.db, jobId) ?? notFound('jobs', jobId);
    const { isChargeable, chargeReason: reason, outsideInvoiceNumber, outsideInvoiceOn } = job;
    return { isChargeable, reason, outsideInvoiceNumber, outsideInvoiceOn };
  },

  'jobs.setCharge': ({ jobId, charge }, context) => {
    if (findJob(context.db, jobId) === undefined) return notFound('jobs', jobId);
    const { reason, ...fields } = charge;
    if (!fields.isChargeable && !reason) return fail('reason-missing', {});
    if (fields.outsideInvoiceOn !== null && !fields.outsideInvoiceNumber) return fail('invoice-number-missing', {});
    context.write((writer) => writer.update(jobs, jobId, { ...fields, chargeReason: reason }));
    context.services.changed(['jobs', 'visits']);
    return {};
  },
};
