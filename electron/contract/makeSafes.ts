/** What was made safe, and stays so until a licensed person closes it with a reason. */
import { z } from 'zod';
import { id, instant, line, nothing, operation, optionalLine } from './operation.ts';
import { licenceProblem } from './visits.ts';

export const makeSafeOperations = {
  /** All that are open, wherever: one that is left out of a list is one that is lit. */
  'makeSafes.list': operation({
    access: 'signed-in',
    input: nothing,
    output: z.array(
      z.strictObject({
        makeSafeId: id,
        applianceId: id,
        serial: z.string(),
        maker: z.string(),
        model: z.string(),
        siteId: id,
        street: z.string(),
        city: z.string(),
        customerName: z.string(),
        what: z.string(),
        isolatedHow: z.string().nullable(),
        labelNumber: z.string().nullable(),
        toldWhom: z.string().nullable(),
        isRefused: z.boolean(),
        openedAt: instant,
        openedByName: z.string(),
      }),
    ),
  }),
  'makeSafes.open': operation({
    access: ['technician', 'helper', 'owner', 'dispatcher'],
    input: z.strictObject({ applianceId: id, visitId: id.nullable(), what: line }),
    output: z.strictObject({ makeSafeId: id }),
  }),
  'makeSafes.describe': operation({
    access: ['technician', 'helper', 'owner', 'dispatcher'],
    input: z.strictObject({
      makeSafeId: id,
      isolatedHow: optionalLine,
      labelNumber: optionalLine,
      toldWhom: optionalLine,
      deliveredHow: optionalLine,
      isRefused: z.boolean(),
    }),
    output: nothing,
    errors: { 'make-safe-closed': nothing },
  }),
  /** What was found, the shut valve, the label: also of one that is closed by now. */
  'makeSafes.attachPhoto': operation({
    access: ['technician', 'helper', 'owner', 'dispatcher'],
    input: z.strictObject({ makeSafeId: id, attachmentId: id }),
    output: nothing,
  }),
  'makeSafes.close': operation({
    access: ['technician', 'owner'],
    input: z.strictObject({ makeSafeId: id, reason: line }),
    output: nothing,
    errors: { 'make-safe-closed': nothing, 'reason-says-nothing': nothing, 'needs-licence': licenceProblem },
  }),
} as const;
