/** What the demo's technician takes up for a quantity: their own instrument of the right kind, else the firm's, in date. */
import { instrumentKindFor } from '../../domain/judgement/proof/instrumentKindFor.ts';
import type { QuantityKey } from '../../domain/quantity/quantities.ts';
import type { OutputOf } from '../contract/index.ts';

type Instruments = OutputOf<'instruments.list'>;

/** null: read off a display, a dial or by eye. */
export function instrumentAtHand(
  quantity: QuantityKey,
  instruments: Instruments,
  technicianId: string | null,
): string | null {
  const kind = instrumentKindFor(quantity);
  const fitting = instruments.filter((one) => one.kind === kind && one.isInDate);
  const own = fitting.find((one) => technicianId !== null && one.keptById === technicianId);
  return (own ?? fitting[0])?.instrumentId ?? null;
}
