/** A person or firm: the customer, or anybody around a site. */
import { z } from 'zod';
import { LANGUAGES } from '../../domain/vocabulary/people.ts';
import { id, line, optionalLine, words } from './operation.ts';

const address = {
  street: optionalLine,
  postcode: optionalLine,
  city: optionalLine,
  region: optionalLine,
  country: optionalLine,
};

export const partyFields = z.strictObject({
  kind: z.enum(['person', 'firm']),
  name: line,
  contactName: optionalLine,
  language: z.enum(LANGUAGES).nullable(),
  email: z.email().nullable(),
  phoneTyped: optionalLine,
  ...address,
  note: words,
});
export type PartyFields = z.output<typeof partyFields>;

export const party = partyFields.extend({ partyId: id, phoneE164: z.string().nullable() });
export type Party = z.output<typeof party>;
