/** Photos that come from a camera in one go: which photo of the run each may be, by the time it was taken. */
import { z } from 'zod';
import { id, instant, nothing, operation } from './operation.ts';

/** A small picture is a few dozen kB; base64 adds a third. */
const MOST_SMALL_BASE64 = 400_000;

export const photoOperations = {
  /** The small picture that stands for a photo on screen; null: none was made yet. */
  'photos.findSmall': operation({
    access: 'signed-in',
    input: z.strictObject({ attachmentId: id }),
    output: z.strictObject({ smallId: id.nullable() }),
  }),
  /** Keeps one that a window has made of the original. One is enough: a second says nothing. */
  'photos.keepSmall': operation({
    access: ['technician', 'helper', 'dispatcher', 'owner'],
    input: z.strictObject({ attachmentId: id, jpegBase64: z.string().min(1).max(MOST_SMALL_BASE64) }),
    output: nothing,
    errors: { 'no-photo': nothing },
  }),
  'photos.match': operation({
    access: 'signed-in',
    input: z.strictObject({
      visitId: id,
      runId: id,
      attachmentIds: z.array(id).min(1).max(100),
      /** When each file was written, where that is known: it may show a camera that is set to another zone. */
      fileTimes: z.record(id, instant).default({}),
    }),
    output: z.array(
      z.strictObject({
        attachmentId: id,
        fileName: z.string(),
        takenAt: instant.nullable(),
        /** The camera wrote it into the picture; otherwise it is the file's own date. */
        isFromCamera: z.boolean(),
        /** The zone a camera's clock was read in that does not say its own; null: it does, or there is no such clock. */
        readIn: z.string().nullable(),
        /** The satellites' own time stands in the picture and bears its zone out. */
        isProven: z.boolean(),
        /** By how much that zone seems wrong; 0: nothing says so. */
        doubtS: z.number().int(),
        place: z.strictObject({ stepKey: z.string(), itemKey: z.string() }).nullable(),
        when: z.enum(['during', 'outside', 'idle', 'doubted', 'unknown']),
        awayS: z.number().int(),
      }),
    ),
  }),
} as const;
