/** Photos that come from a camera in one go: which photo of the run each may be, by the time it was taken. */
import { z } from 'zod';
import { id, instant, operation } from './operation.ts';

export const photoOperations = {
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
