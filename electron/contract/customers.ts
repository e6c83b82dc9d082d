/** Customers and what they allowed us to write to them about. */
import { z } from 'zod';
import { CHANNELS, PURPOSES } from '../../domain/vocabulary/people.ts';
import { applianceSummary } from './appliances.ts';
import { day, id, line, nothing, operation, page, words } from './operation.ts';
import { party, partyFields } from './parties.ts';
import { siteSummary } from './sites.ts';

export const customerOperations = {
  'customers.list': operation({
    access: 'signed-in',
    input: z.strictObject(page),
    output: z.strictObject({
      rows: z.array(
        z.strictObject({
          customerId: id,
          name: z.string(),
          phone: z.string().nullable(),
          city: z.string().nullable(),
          siteCount: z.number().int(),
          applianceCount: z.number().int(),
          openMakeSafes: z.number().int(),
        }),
      ),
      next: id.nullable(),
    }),
  }),
  'customers.get': operation({
    access: 'signed-in',
    input: z.strictObject({ customerId: id }),
    output: z.strictObject({
      customerId: id,
      since: day,
      note: words,
      party,
      consents: z.array(
        z.strictObject({
          purpose: z.enum(PURPOSES),
          channel: z.enum(CHANNELS),
          granted: z.boolean(),
          on: day,
          source: z.string(),
        }),
      ),
      sites: z.array(siteSummary),
      appliances: z.array(applianceSummary),
    }),
  }),
  'customers.create': operation({
    access: ['dispatcher', 'owner', 'technician'],
    input: z.strictObject({
      party: partyFields,
      note: words,
      /** Go on although somebody much like this is on file. */
      isKnownNew: z.boolean().default(false),
    }),
    output: z.strictObject({ customerId: id, partyId: id }),
    errors: {
      'looks-like': z.strictObject({
        others: z.array(z.strictObject({ customerId: id, name: z.string(), why: z.string() })),
      }),
    },
  }),
  'customers.update': operation({
    access: ['dispatcher', 'owner', 'technician'],
    input: z.strictObject({ customerId: id, party: partyFields, note: words }),
    output: nothing,
    errors: { 'person-erased': nothing },
  }),
  'customers.recordConsent': operation({
    access: ['dispatcher', 'owner', 'technician'],
    input: z.strictObject({
      partyId: id,
      purpose: z.enum(PURPOSES),
      channel: z.enum(CHANNELS),
      granted: z.boolean(),
      on: day,
      source: line,
    }),
    output: nothing,
    errors: { 'day-in-future': nothing },
  }),
} as const;
