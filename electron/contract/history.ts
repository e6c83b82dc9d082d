/** An appliance's whole life: what happened to it, who owned it, what was claimed for it. */
import { z } from 'zod';
import { TRANSFER_CONSEQUENCES } from '../../domain/vocabulary/places.ts';
import { day, id, instant, line, nothing, operation, optionalLine, words } from './operation.ts';
import { partyFields } from './parties.ts';

export const HISTORY_KINDS = [
  'visit',
  'date',
  'registration',
  'document',
  'fuel',
  'part',
  'make-safe',
  'owner',
  'claim',
  'message',
  'recall',
] as const;

const historyEntry = z.strictObject({
  on: day,
  kind: z.enum(HISTORY_KINDS),
  /** Which of its kind: `service`, `installed`, `submitted` … */
  what: z.string(),
  detail: z.string().nullable(),
  visitId: id.nullable(),
  runId: id.nullable(),
  attachmentId: id.nullable(),
  /** Of a run, as they stand. */
  readings: z.array(
    z.strictObject({
      quantity: z.string(),
      point: z.string().nullable(),
      valueOwn: z.number().nullable(),
      comparator: z.string(),
    }),
  ),
  photos: z.array(z.strictObject({ attachmentId: id, itemKey: z.string().nullable() })),
});
export type HistoryEntry = z.output<typeof historyEntry>;

const transferConsequence = z.enum(TRANSFER_CONSEQUENCES);
const outcomeOfPart = z.enum(['granted', 'granted-in-part', 'refused']);
const money = z.number().int().min(0).max(100_000_000_00);

export const claimFields = z.strictObject({
  partNumber: line,
  partName: optionalLine,
  openedOn: day,
  sentOn: day.nullable(),
  partReturnedOn: day.nullable(),
  claimNumber: optionalLine,
  decidedOn: day.nullable(),
  isWithdrawn: z.boolean(),
  currency: z
    .string()
    .regex(/^[A-Z]{3}$/)
    .nullable(),
  /** In the currency's smallest unit. */
  partsMinorUnits: money.nullable(),
  partsOutcome: outcomeOfPart.nullable(),
  partsGrantedMinorUnits: money.nullable(),
  labourMinorUnits: money.nullable(),
  labourOutcome: outcomeOfPart.nullable(),
  labourGrantedMinorUnits: money.nullable(),
  /** In the maker's words. */
  refusedBecause: words,
  note: words,
});
export type ClaimFields = z.output<typeof claimFields>;

const claimRow = z.strictObject({
  claimId: id,
  applianceId: id,
  serial: z.string(),
  maker: z.string(),
  model: z.string(),
  outcome: z.enum(['open', 'granted', 'granted-in-part', 'refused', 'withdrawn']),
  claim: claimFields,
});
export type ClaimRow = z.output<typeof claimRow>;

const claimErrors = {
  'currency-missing': nothing,
  'days-out-of-order': z.strictObject({ earlier: z.string(), later: z.string() }),
  'granted-more-than-asked': z.strictObject({ what: z.enum(['parts', 'labour']) }),
} as const;

export const historyOperations = {
  'history.get': operation({
    access: 'signed-in',
    input: z.strictObject({ applianceId: id }),
    output: z.strictObject({
      applianceId: id,
      serial: z.string(),
      maker: z.string(),
      model: z.string(),
      siteId: id.nullable(),
      where: z.string().nullable(),
      customerId: id.nullable(),
      /** The newest first. Whoever sold the house is here by name alone. */
      owners: z.array(
        z.strictObject({
          name: z.string(),
          fromOn: day.nullable(),
          toOn: day.nullable(),
          phone: z.string().nullable(),
          email: z.string().nullable(),
        }),
      ),
      entries: z.array(historyEntry),
    }),
  }),
  'claims.list': operation({
    access: 'signed-in',
    input: z.strictObject({ applianceId: id.nullable().default(null), openOnly: z.boolean().default(false) }),
    output: z.array(claimRow),
  }),
  'claims.open': operation({
    access: ['owner', 'dispatcher'],
    input: z.strictObject({ applianceId: id, claim: claimFields }),
    output: z.strictObject({ claimId: id }),
    errors: claimErrors,
  }),
  'claims.update': operation({
    access: ['owner', 'dispatcher'],
    input: z.strictObject({ claimId: id, claim: claimFields }),
    output: nothing,
    errors: claimErrors,
  }),
  /** One PDF with everything there is for a claim; `claimId` null: without a claim in it. */
  'claims.buildFile': operation({
    access: ['owner', 'dispatcher', 'technician'],
    input: z.strictObject({ applianceId: id, claimId: id.nullable() }),
    output: z.strictObject({ attachmentId: id, fileName: z.string(), recordCount: z.number().int(), madeAt: instant }),
  }),
  /** The house changed hands: its technical history stays with it, the people change. */
  'sites.transfer': operation({
    access: ['owner', 'dispatcher'],
    input: z.strictObject({
      siteId: id,
      on: day,
      to: z.union([z.strictObject({ customerId: id }), partyFields]),
    }),
    output: z.strictObject({ customerId: id }),
    errors: { 'same-owner': nothing, 'day-in-future': nothing },
  }),
  /** The newest change of hands that stands, and what rests on it since; null: there was none. */
  'sites.lastTransfer': operation({
    access: 'signed-in',
    input: z.strictObject({ siteId: id }),
    output: z
      .strictObject({
        transferId: id,
        changedOn: day,
        fromName: z.string(),
        toName: z.string(),
        byName: z.string(),
        at: instant,
        restsOnIt: z.array(transferConsequence),
      })
      .nullable(),
  }),
  /** It was a mistake: the house is whose it was before. The history keeps both, and who was filed for it stays on file. */
  'sites.takeBackTransfer': operation({
    access: ['owner', 'dispatcher'],
    input: z.strictObject({ siteId: id, transferId: id, why: line }),
    output: z.strictObject({ customerId: id }),
    errors: {
      'not-the-last-transfer': nothing,
      'person-erased': nothing,
      'transfer-rested-on': z.strictObject({ what: z.array(transferConsequence) }),
    },
  }),
} as const;
