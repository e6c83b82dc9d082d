/** The sheet that stays with the people who live there. */
import { z } from 'zod';
import { MESSAGE_LANGUAGES } from '../../domain/messages/messageKinds.ts';
import { id, nothing, operation } from './operation.ts';

const language = z.enum(MESSAGE_LANGUAGES);

export const handoverOperations = {
  /** What it speaks when nobody says otherwise, and whose language that is. */
  'handovers.getLanguage': operation({
    access: 'signed-in',
    input: z.strictObject({ runId: id }),
    output: z.strictObject({ language, of: z.enum(['occupant', 'customer', 'company']), name: z.string() }),
  }),
  'handovers.build': operation({
    access: ['technician', 'dispatcher', 'owner'],
    /** Without a language it is the occupant's or the customer's; where none is on file, the company's. */
    input: z.strictObject({ runId: id, language: language.nullable().default(null) }),
    output: z.strictObject({ attachmentId: id, fileName: z.string(), language, awaitsNativeReader: z.boolean() }),
    errors: {
      /** It tells people whom to call about gas: without the number there is no printout. */
      'emergency-number-missing': nothing,
    },
  }),
} as const;
