/** A startup as it was once written down at the appliance: what was answered, read and seen, item by item, as typed. */
import { z } from 'zod';

const typed = z.strictObject({ text: z.string(), unit: z.string() });

export const recordedRun = z.strictObject({
  /** Serial of the demo appliance that was started. */
  serial: z.string(),
  startedAt: z.iso.datetime(),
  /** Values by item key; an object is "not possible, because". */
  answers: z.record(z.string(), z.union([z.string(), z.strictObject({ notPossible: z.string() })])),
  /** One reading an item. */
  readings: z.record(z.string(), z.union([typed, z.strictObject({ notMeasured: z.string() })])),
  /** Samples of each quantity at a firing point, in order. */
  series: z.record(z.string(), z.record(z.string(), z.array(typed))),
  /** Picture file in assets/demo/photos by item key; `default` would serve every other photo item. */
  photos: z.record(z.string(), z.string()),
  /** Names by sign-off item. */
  signOffs: z.record(z.string(), z.string()),
});
export type RecordedRun = z.output<typeof recordedRun>;
