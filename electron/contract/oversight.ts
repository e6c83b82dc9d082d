/** Records that the owner had better look at: asked of the record each time, kept nowhere, shown to nobody else. */
import { z } from 'zod';
import type { OddRecord } from '../../domain/judgement/audit/oddRecords.ts';
import { day, domainValue, id, instant, operation } from './operation.ts';

const auditedVisit = z.strictObject({
  runId: id,
  visitId: id,
  serial: z.string(),
  customerName: z.string(),
  street: z.string(),
  startedAt: instant,
});
export type AuditedVisit = z.output<typeof auditedVisit>;

export const oversightOperations = {
  /** Of the newest runs begun in these days; by technician, what repeats and what can't be. */
  'oversight.list': operation({
    access: ['owner'],
    input: z.strictObject({ from: day, to: day }),
    output: z.strictObject({
      odd: z.array(domainValue<OddRecord & { readonly name: string | null }>()),
      visits: z.array(auditedVisit),
      /** Begun earlier in the same days, and not looked at: shorter days show them. */
      leftOut: z.number().int(),
    }),
  }),
};
