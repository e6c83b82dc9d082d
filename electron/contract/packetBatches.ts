/** Many packets one after the other: started, worked off a little at a time, stopped, gone on with, and saved together. */
import { z } from 'zod';
import { id, instant, nothing, operation } from './operation.ts';

/** Why one could not be built. */
export const PACKET_FAILURES = ['not-sealed', 'gaps-open', 'not-found', 'internal'] as const;
export const PACKET_BATCH_PARTS = ['pages', 'whole'] as const;

export const MOST_PACKETS_AT_ONCE = 5000;

const batch = z.strictObject({
  batchId: id,
  isDraft: z.boolean(),
  startedByName: z.string(),
  startedAt: instant,
  cancelledAt: instant.nullable(),
  total: z.number().int(),
  built: z.number().int(),
  failed: z.number().int(),
  /** Not yet tried. */
  waiting: z.number().int(),
});
export type PacketBatch = z.output<typeof batch>;

const item = z.strictObject({
  runId: id,
  applianceId: id,
  maker: z.string(),
  model: z.string(),
  serial: z.string(),
  customerName: z.string().nullable(),
  state: z.enum(['waiting', 'built', 'failed']),
  why: z.enum(PACKET_FAILURES).nullable(),
  gapCount: z.number().int().nullable(),
  packetPdfId: id.nullable(),
});
export type PacketBatchItem = z.output<typeof item>;

export const packetBatchOperations = {
  'packetBatches.start': operation({
    access: ['owner', 'dispatcher'],
    input: z.strictObject({ runIds: z.array(id).min(1).max(MOST_PACKETS_AT_ONCE), isDraft: z.boolean() }),
    output: z.strictObject({ batchId: id }),
  }),
  /** Builds the next ones for a moment and answers how far it is; asked again until nothing waits. */
  'packetBatches.goOn': operation({
    access: ['owner', 'dispatcher'],
    input: z.strictObject({ batchId: id }),
    output: batch,
    errors: { 'batch-stopped': nothing },
  }),
  /** What is built stays; the rest waits until somebody resumes. */
  'packetBatches.stop': operation({
    access: ['owner', 'dispatcher'],
    input: z.strictObject({ batchId: id }),
    output: nothing,
  }),
  /** Takes the stop back; those that failed are tried again where that is wanted. */
  'packetBatches.resume': operation({
    access: ['owner', 'dispatcher'],
    input: z.strictObject({ batchId: id, withFailed: z.boolean() }),
    output: nothing,
  }),
  'packetBatches.list': operation({ access: 'signed-in', input: nothing, output: z.array(batch) }),
  'packetBatches.get': operation({
    access: 'signed-in',
    input: z.strictObject({
      batchId: id,
      show: z.enum(['all', 'failed']).default('all'),
      /** The position of the last one seen. */
      after: z.number().int().min(-1).default(-1),
    }),
    output: z.strictObject({
      batch,
      items: z.array(item),
      next: z.number().int().nullable(),
      /** Into how many files each way of saving is divided. */
      fileCounts: z.strictObject({ pages: z.number().int(), whole: z.number().int() }),
    }),
  }),
  /** One ZIP of what is built, with a table of what is not and why; a large batch is divided into several. */
  'packetBatches.save': operation({
    access: ['owner', 'dispatcher'],
    input: z.strictObject({ batchId: id, what: z.enum(PACKET_BATCH_PARTS), file: z.number().int().min(1).default(1) }),
    output: z.strictObject({ attachmentId: id, fileName: z.string(), packetCount: z.number().int() }),
    errors: { 'nothing-built': nothing },
  }),
} as const;
