/**
 * When what a finding says was found: with the newest of its readings. Of CO worked out from a sample only the CO counts:
 * after a stop the sample is read again O₂ first, and O₂ of now beside CO of before the make-safe is no new stop.
 */
import type { QuantityKey } from '../../quantity/quantities.ts';
import { newest } from './instants.ts';

export function foundAt(
  sources: readonly { readonly quantity: QuantityKey; readonly measuredAt: string }[],
): string | null {
  const co = sources.filter((one) => one.quantity === 'coPpm');
  return newest(co.length > 0 ? co : sources, (one) => one.measuredAt)?.measuredAt ?? null;
}
