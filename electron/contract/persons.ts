/** What a person may ask for: their data, and to be forgotten. */
import { z } from 'zod';
import { PERSON_HOLDS } from '../../domain/vocabulary/people.ts';
import { id, nothing, operation } from './operation.ts';

export const personOperations = {
  /** What is there, and what speaks against erasing it now. */
  'persons.look': operation({
    access: ['owner'],
    input: z.strictObject({ partyId: id }),
    output: z.strictObject({
      name: z.string(),
      isErased: z.boolean(),
      /** Rows by what they are: visits, messages, sites. */
      held: z.array(z.strictObject({ what: z.string(), count: z.number().int() })),
      fileCount: z.number().int(),
      holds: z.array(z.strictObject({ what: z.enum(PERSON_HOLDS), count: z.number().int() })),
      /** Sites whose address stays because somebody else has a part there. */
      sharedSiteCount: z.number().int(),
      copyCount: z.number().int(),
    }),
  }),
  'persons.export': operation({
    access: ['owner'],
    input: z.strictObject({ partyId: id }),
    output: z.strictObject({ attachmentId: id, fileName: z.string() }),
  }),
  /** Cannot be taken back. */
  'persons.erase': operation({
    access: ['owner'],
    input: z.strictObject({
      partyId: id,
      /** The name as it is on file, typed. */
      typedName: z.string(),
      /** Throws every backup away and makes a new one; otherwise they keep the person until they age out. */
      alsoCopies: z.boolean(),
    }),
    output: z.strictObject({
      sweptRows: z.number().int(),
      fileCount: z.number().int(),
      copiesLeft: z.number().int(),
    }),
    errors: { 'name-differs': nothing, 'person-erased': nothing },
  }),
} as const;
