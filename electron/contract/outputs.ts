/** What leaves the board on paper or for other calendars. */
import { z } from 'zod';
import { day, id, operation } from './operation.ts';

export const outputOperations = {
  /** One technician's day as a PDF, kept as an attachment. */
  'daySheets.build': operation({
    access: 'signed-in',
    input: z.strictObject({ staffId: id, on: day }),
    output: z.strictObject({ attachmentId: id, visitCount: z.number().int() }),
  }),
  /** Everybody's week as a PDF, from the Monday given. */
  'weekOverviews.build': operation({
    access: ['owner', 'dispatcher'],
    input: z.strictObject({ from: day }),
    output: z.strictObject({ attachmentId: id }),
  }),
  /** The calendar file of one person. */
  'calendars.export': operation({
    access: 'signed-in',
    input: z.strictObject({ staffId: id, from: day, to: day }),
    output: z.strictObject({ fileName: z.string(), text: z.string(), visitCount: z.number().int() }),
  }),
} as const;
