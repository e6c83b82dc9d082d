/** Photos that come from a camera in one go: which photo of the run each may be, by the time it was taken. */
import { z } from 'zod';
import { id, instant, operation } from './operation.ts';

export const photoOperations = {
  'photos.match': operation({
    access: 'signed-in',
    input: z.strictObject({ visitId: id, runId: id, attachmentIds: z.array(id).min(1).max(100) }),
    output: z.array(
      z.strictObject({
        attachmentId: id,
        fileName: z.string(),
        takenAt: instant.nullable(),
        /** The camera wrote it into the picture; otherwise it is the file's own date. */
        isFromCamera: z.boolean(),
        place: z.strictObject({ stepKey: z.string(), itemKey: z.string() }).nullable(),
        when: z.enum(['during', 'outside', 'unknown']),
        awayS: z.number().int(),
      }),
    ),
  }),
} as const;
