/** What the columns of an instrument's own export mean. Said once by a person, kept for the instrument, used for the next file. */
import { z } from 'zod';
import { QUANTITY_KEYS, type QuantityKey } from '../quantity/quantities.ts';

const quantity = z.enum(QUANTITY_KEYS as [QuantityKey, ...QuantityKey[]]);

/** A column is known by its heading, so that a file with its columns in another order is still understood. */
const column = z.discriminatedUnion('means', [
  z.strictObject({
    heading: z.string().max(100),
    means: z.literal('quantity'),
    quantity,
    /** Symbol of the unit its numbers are in. */
    unit: z.string().max(20),
  }),
  /** A moment, a day or a time of day: whichever its cells hold. */
  z.strictObject({ heading: z.string().max(100), means: z.literal('time') }),
  z.strictObject({ heading: z.string().max(100), means: z.literal('nothing') }),
]);

export const exportMapping = z.strictObject({
  columns: z.array(column).max(100),
  /** `1,234`: the sign before the decimals in this instrument's files. null: nobody has had to say. */
  decimalSign: z.enum(['point', 'comma']).nullable(),
  /** `03/04/2026`: null where its dates can be read one way only. */
  dayOrder: z.enum(['day-first', 'month-first']).nullable(),
});
export type ExportMapping = z.infer<typeof exportMapping>;
export type ExportColumn = ExportMapping['columns'][number];
