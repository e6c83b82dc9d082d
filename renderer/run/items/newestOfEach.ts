/** Of each quantity its newest reading: half a sample must not speak for the half that is still to come. */
import type { RecordedReading } from '../../../domain/procedure/runRecord.ts';

/** In the order of their samples. */
export function newestOfEach(
  readings: readonly Pick<RecordedReading, 'quantity' | 'readingId'>[],
): ReadonlySet<string> {
  return new Set(new Map(readings.map((one) => [one.quantity, one.readingId])).values());
}
