/**
 * What is sealed for one run of a visit: everything recorded, what it was judged by, and what came out, as it stood at
 * sealing. Numbers are plain decimals in text, personal values are commitments, instants are UTC, days are 'YYYY-MM-DD'.
 * The published form of this schema is assets/schemas/record-1.schema.json.
 */
import { z } from 'zod';
import { VERDICTS } from '../../domain/judgement/finding.ts';
import { language, unitSystem } from '../contract/app.ts';
import { jobKind, visitOutcome } from '../contract/visits.ts';
import { commitment } from './commitment.ts';
import { decimalText } from './decimalText.ts';
import { appliance } from './record/appliance.ts';
import { day, id, instant, number, personal, sha256, words } from './record/fields.ts';
import { computed, finding } from './record/findings.ts';
import { party, person } from './record/people.ts';
import { run } from './record/run.ts';
import { sheet } from './record/sheet.ts';
import { gasSupply, site } from './record/site.ts';

export const RECORD_SCHEMA = 'lightoff.record/1';
/** The same content before it is sealed: it can never pass for a sealed one. */
export const DRAFT_SCHEMA = 'lightoff.draft/1';

const body = {
  language,
  unitSystem,
  company: z.strictObject({
    name: words,
    licenceNumber: words.nullable(),
    jurisdiction: words,
    timeZone: words,
    region: words.nullable(),
    country: words,
    street: personal,
    postcode: personal,
    city: personal,
    phone: personal,
    email: personal,
  }),
  job: z.strictObject({ jobId: id, kind: jobKind }),
  visit: z.strictObject({
    visitId: id,
    /** The day at the site. */
    on: day,
    startedAt: instant.nullable(),
    finishedAt: instant.nullable(),
    outcome: visitOutcome.nullable(),
    labourMin: number,
  }),
  people: z.array(person),
  parties: z.array(party),
  site,
  gasSupply: gasSupply.nullable(),
  appliance,
  permits: z.array(
    z.strictObject({
      number: words,
      issuer: words,
      state: z.enum(['applied', 'issued', 'inspected', 'closed', 'refused']),
      on: day.nullable(),
    }),
  ),
  sheet,
  run,
  findings: z.array(finding),
  computed: z.array(computed),
};

const amendment = z.strictObject({
  /** Where in the record, as a JSON pointer (RFC 6901); null: something the record has no place for. */
  path: z.string().startsWith('/').max(600).nullable(),
  /** What it is about, in words. */
  what: words,
  was: personal,
  isNow: commitment,
  because: commitment,
  /** What the new number or answer puts outside its limit or at a stop. Amendments sealed before they were judged lack it. */
  judged: z.array(z.strictObject({ subject: words, verdict: z.enum(VERDICTS) })).optional(),
  byId: id,
  byName: commitment,
  at: instant,
});

export const sealedRecord = z.strictObject({
  schema: z.literal(RECORD_SCHEMA),
  seal: z.strictObject({
    /** 1 for the first entry of the visit's chain. */
    sequence: decimalText,
    kind: z.enum(['sealed', 'amendment']),
    /** Of the entry before in the chain; null for the first. */
    previousSha256: sha256.nullable(),
    /** What an amendment corrects; the corrected record stays in the chain. */
    amends: z.strictObject({ sha256, reason: commitment }).nullable(),
    /** All amendments up to this entry, oldest first. What they correct stands below as it was sealed. Absent before there were any. */
    amendments: z.array(amendment).optional(),
    sealedAt: instant,
    sealedById: id,
  }),
  ...body,
});
export type SealedRecord = z.output<typeof sealedRecord>;

export const draftRecord = z.strictObject({ schema: z.literal(DRAFT_SCHEMA), ...body });
export type DraftRecord = z.output<typeof draftRecord>;

export type AnyRecord = SealedRecord | DraftRecord;

export function isSealed(record: AnyRecord): record is SealedRecord {
  return record.schema === RECORD_SCHEMA;
}
