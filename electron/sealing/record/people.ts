/** Who was there and who has a part in it, as sealed. */
import { z } from 'zod';
import { CHANNELS, PARTY_ROLES, PURPOSES } from '../../../domain/vocabulary/people.ts';
import { crewRole } from '../../contract/visits.ts';
import { commitment } from '../commitment.ts';
import { day, fuel, id, number, personal, words } from './fields.ts';

export const person = z.strictObject({
  staffId: id,
  name: commitment,
  role: crewRole,
  licences: z.array(
    z.strictObject({
      number: commitment,
      issuer: words,
      place: words,
      licenceClass: words,
      /** null: every fuel. */
      fuel: fuel.nullable(),
      /** null: no size line. */
      maxKw: number,
      validFrom: day,
      validTo: day,
      /** On the day of the visit, at the site. */
      wasValidOnVisitDay: z.boolean(),
    }),
  ),
  trainings: z.array(
    z.strictObject({ maker: words, modelLine: words, number: personal, validFrom: day, validTo: day.nullable() }),
  ),
});

export const party = z.strictObject({
  partyId: id,
  kind: z.enum(['person', 'firm']),
  roles: z.array(z.enum(PARTY_ROLES)),
  name: commitment,
  contactName: personal,
  email: personal,
  phone: personal,
  street: personal,
  postcode: personal,
  city: personal,
  region: words.nullable(),
  country: words.nullable(),
  consents: z.array(
    z.strictObject({ purpose: z.enum(PURPOSES), channel: z.enum(CHANNELS), granted: z.boolean(), on: day }),
  ),
});
