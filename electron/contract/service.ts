/** The years of one appliance: what its visits read, and when it is next due. */
import { z } from 'zod';
import type { SheetLimit } from '../../domain/procedure/modelSheet.ts';
import type { PastRun } from '../../domain/trend/pastRun.ts';
import { nextService } from './dues.ts';
import { day, domainValue, id, operation } from './operation.ts';

export const serviceOperations = {
  /** What every visit read, oldest first, with the limits of the sheet as it is now. */
  'service.getTrends': operation({
    access: 'signed-in',
    input: z.strictObject({ applianceId: id }),
    output: z.strictObject({
      runs: z.array(domainValue<PastRun>()),
      firingPoints: z.array(z.strictObject({ key: z.string(), label: z.string() })),
      limits: z.array(domainValue<SheetLimit>()),
      sheetTitle: z.string().nullable(),
    }),
  }),
  /** The next service and why then; and the one after, if it were done today. */
  'service.getDue': operation({
    access: 'signed-in',
    input: z.strictObject({ applianceId: id }),
    output: z.strictObject({
      today: day,
      /** The last one that was finished. */
      lastOn: day.nullable(),
      next: nextService,
      ifDoneToday: nextService,
    }),
  }),
} as const;
