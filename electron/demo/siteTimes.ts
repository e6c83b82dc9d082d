/** How long things take at the invented boilers of the demo. */
import type { QuantityKey } from '../../domain/quantity/quantities.ts';

/** What a person needs between two entries. */
export const SECONDS_PER_ENTRY = 15;
/** From one stage of a tuning run to the next. */
export const SECONDS_PER_TUNING_STAGE = 90;

/** Some numbers are themselves how long it took to get them: a test that stands, a meter that is watched. */
export function secondsToRead(quantity: QuantityKey, typedText: string): number {
  if (quantity === 'tightnessMinutes') return 60 * Number(typedText);
  return quantity === 'meterSeconds' ? Number(typedText) : 0;
}
