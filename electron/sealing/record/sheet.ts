/** What the run was judged by: the sheet with its cover, as sealed. */
import { z } from 'zod';
import { BLOCKS, COVER_DATES } from '../../../domain/procedure/modelSheet.ts';
import { decimalText } from '../decimalText.ts';
import { basis, day, key, number, quantity, sha256, words } from './fields.ts';

const altitudeRule = z.discriminatedUnion('method', [
  z.strictObject({ method: z.literal('not-on-sheet') }),
  z.strictObject({ method: z.literal('no-derate'), basis }),
  z.strictObject({
    method: z.literal('per-1000-ft'),
    pct: decimalText,
    fromFt: decimalText,
    countedFrom: z.enum(['sea-level', 'threshold']),
    basis,
  }),
  z.strictObject({
    method: z.literal('bands'),
    bands: z.array(z.strictObject({ fromFt: decimalText, toFt: decimalText, pct: decimalText })),
    basis,
  }),
]);

const coverWindow = z.union([z.strictObject({ days: decimalText }), z.strictObject({ months: decimalText })]);

const cover = z.strictObject({
  terms: z.array(
    z.strictObject({
      part: z.enum(['exchanger', 'parts', 'labour']),
      registeredMonths: decimalText,
      unregisteredMonths: decimalText,
      countedFrom: z.enum(COVER_DATES),
    }),
  ),
  registration: z.strictObject({
    window: coverWindow,
    countedFrom: z.enum([...COVER_DATES, 'earliest']),
    basis,
  }),
  conditions: z.strictObject({
    serviceEveryMonths: decimalText,
    graceMonths: decimalText,
    serviceCountedFrom: z.enum(['anniversary', 'last-service']),
    waterQualityRecorded: z.boolean(),
    licensedInstaller: z.boolean(),
    originalOwner: z.boolean(),
    use: z.enum(['home', 'commercial', 'any']),
    transferWindowDays: number,
  }),
});

/** The sheet the run was walked with. Its words for the steps are here, so that the record reads without the sheet. */
export const sheet = z.strictObject({
  sheetId: key,
  revision: key,
  /** Of the sheet's canonical JSON. */
  sha256,
  title: words,
  maker: words.nullable(),
  issuedOn: day,
  firingPoints: z.array(z.strictObject({ key, label: words })),
  altitude: altitudeRule,
  inputTolerancePct: decimalText,
  cover: cover.nullable(),
  steps: z.array(
    z.strictObject({
      key,
      title: words,
      items: z.array(
        z.strictObject({
          key,
          kind: key,
          label: words,
          blocks: z.array(z.enum(BLOCKS)),
          meets: z.array(key),
          quantity: quantity.nullable(),
          options: z.array(z.strictObject({ value: key, label: words })),
        }),
      ),
    }),
  ),
});
