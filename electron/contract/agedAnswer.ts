/** A readiness answer that was given so long ago that it has to be asked again. */
import { z } from 'zod';

/** As of the day of the visit once that is near, else of today. */
export const agedAnswer = z.strictObject({ itemKey: z.string(), askedDaysAgo: z.number().int() });
