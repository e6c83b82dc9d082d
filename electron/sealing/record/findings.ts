/** What was judged and worked out, as sealed. */
import { z } from 'zod';
import { VERDICTS } from '../../../domain/judgement/finding.ts';
import { BLOCKS } from '../../../domain/procedure/modelSheet.ts';
import { decimalText } from '../decimalText.ts';
import { basis, id, key, number, quantity, words } from './fields.ts';

export const finding = z.strictObject({
  readingId: id.nullable(),
  subject: words,
  verdict: z.enum(VERDICTS),
  proof: z.strictObject({ proven: z.boolean(), because: z.array(key) }),
  blocks: z.array(z.enum(BLOCKS)),
  basis: z.strictObject({
    /** As it was applied, in the quantity's own unit. */
    limit: z
      .strictObject({
        quantity,
        point: key.nullable(),
        min: number,
        max: number,
        severity: z.enum(['outside', 'stop']),
      })
      .nullable(),
    from: z.enum(['sheet', 'ceiling', 'physics', 'practice', 'none']),
    source: basis.nullable(),
    sheet: z.strictObject({ sheetId: key, revision: key }).nullable(),
    formula: words.nullable(),
    inputs: z.record(key, words),
    /** What the formula gave, when the judged number was worked out. */
    result: z.strictObject({ value: decimalText, unit: words, plusMinus: number }).nullable(),
  }),
  missing: z.array(words),
  makeSafe: z.array(words),
  /** Everybody out before anything else. */
  leaveFirst: z.boolean(),
  /** Suggestions that were open at sealing and were not taken. */
  suggestions: z.array(key),
});

/** A number worked out from readings, with how. */
export const computed = z.strictObject({
  key,
  label: words,
  point: key.nullable(),
  /** null: it can't be worked out; `missing` says why. */
  value: number,
  unit: words,
  /** Decimals that mean something, for printing. */
  decimals: decimalText,
  /** Half the width of the interval that the timing or the instruments leave. */
  plusMinus: number,
  formula: words,
  inputs: z.record(key, words),
  source: words.nullable(),
  missing: z.array(words),
});
