/** Everything that was recorded in the run, as sealed. */
import { z } from 'zod';
import { INSTRUMENT_KINDS } from '../../../domain/vocabulary/people.ts';
import { jobKind } from '../../contract/visits.ts';
import { commitment } from '../commitment.ts';
import { decimalText } from '../decimalText.ts';
import { day, fuel, id, instant, key, number, personal, quantity, sha256, words } from './fields.ts';

/** Absent or null: recorded in the app. Records sealed before there was paper lack it. */
const transcribed = z.strictObject({ typedById: id, typedAt: instant }).nullable().optional();

export const run = z.strictObject({
  runId: id,
  kind: jobKind,
  fuel,
  startedAt: instant.nullable(),
  openMakeSafes: decimalText,
  /** Recalls and stop-use notices nobody had settled. Records sealed before they were kept lack them. */
  openNotices: z
    .array(
      z.strictObject({ recallId: id, title: words, number: words.nullable(), source: words, isRefused: z.boolean() }),
    )
    .optional(),
  /** All that were given, oldest first: the last one of an item counts. */
  answers: z.array(
    z.strictObject({
      stepKey: key,
      itemKey: key,
      /** Yes, no, not applicable, the chosen option, a day or a time. */
      value: words.nullable(),
      /** Free words and names. */
      words: personal,
      reason: personal,
      /** What a test was made with. Records sealed before answers named it lack it. */
      instrumentId: id.nullable().optional(),
      byId: id,
      at: instant,
      transcribed,
    }),
  ),
  readings: z.array(
    z.strictObject({
      readingId: id,
      visitId: id,
      stepKey: key,
      itemKey: key,
      quantity,
      point: key.nullable(),
      sample: decimalText,
      typedText: words,
      typedUnit: words,
      /** In the quantity's own unit, which its key names; null: not measured. */
      valueOwn: number,
      comparator: z.enum(['=', '>', '<']),
      notMeasuredReason: personal,
      instrumentId: id.nullable(),
      measuredById: id,
      typedById: id,
      measuredAt: instant,
      supersededById: id.nullable(),
      origin: z.enum(['typed', 'suggestion', 'transcribed', 'imported']),
    }),
  ),
  holds: z.array(
    z.strictObject({
      itemKey: key,
      startedAt: instant,
      requiredS: decimalText,
      endedAt: instant.nullable(),
      clockJumped: z.boolean(),
      transcribed,
    }),
  ),
  tunings: z.array(
    z.strictObject({
      itemKey: key,
      startedAt: instant,
      stages: z.array(z.strictObject({ stageKey: key, reachedAt: instant })),
      finishedAt: instant.nullable(),
      interruptedAt: instant.nullable(),
      interruptedReason: personal,
      transcribed,
    }),
  ),
  /** Records sealed before they were kept lack both. */
  parts: z
    .array(
      z.strictObject({
        rowId: id,
        itemKey: key,
        partKey: key,
        label: words,
        partNumber: words,
        serial: words.nullable(),
        byId: id,
        at: instant,
      }),
    )
    .optional(),
  lockouts: z
    .array(
      z.strictObject({
        rowId: id,
        itemKey: key,
        happenedAt: instant,
        code: words.nullable(),
        outdoorTypedText: words.nullable(),
        outdoorTypedUnit: words.nullable(),
        outdoorC: number,
        byId: id,
        at: instant,
      }),
    )
    .optional(),
  photos: z.array(
    z.strictObject({
      itemKey: key,
      attachmentId: id,
      sha256,
      takenAt: instant,
      /** Of the copy without place that goes out in place of the original. */
      copySha256: sha256.optional(),
    }),
  ),
  firingPoints: z.array(z.strictObject({ firingPoint: key, reachedAt: instant, transcribed })),
  signOffs: z.array(
    z.strictObject({
      itemKey: key,
      by: z.enum(['licensed', 'occupant']),
      name: commitment,
      staffId: id.nullable(),
      at: instant,
      signatureSha256: sha256.optional(),
      transcribed,
    }),
  ),
  instruments: z.array(
    z.strictObject({
      instrumentId: id,
      label: words,
      serial: words,
      kind: z.enum(INSTRUMENT_KINDS),
      /** As it stood on the day of the visit. */
      calibratedOn: day.nullable(),
      calibrationDueOn: day.nullable(),
      certificate: words.nullable(),
      /** Those that counted for a reading of this run, by its day, oldest first. Records sealed before lack them. */
      calibrations: z
        .array(z.strictObject({ calibratedOn: day, dueOn: day, certificate: words.nullable() }))
        .optional(),
      accuracy: z.record(quantity, z.strictObject({ abs: decimalText, relPct: decimalText })),
      rangeMax: z.record(quantity, decimalText),
    }),
  ),
});
