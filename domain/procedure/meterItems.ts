/**
 * What a run asks for to time the gas meter: its dial, turns and time, that everything else on it is off, and the heating value
 * that turns the rate into an input.
 */
import type { ItemOf, SheetStep } from './modelSheet.ts';

const READ_AT_METER: readonly string[] = ['meterDialM3', 'meterTurns', 'meterSeconds'];
/** What an item meets that belongs to timing the meter. */
const CLOCKING = '2.8/clocking';

/** Only what may be answered otherwise than with a number or a yes: a sheet that insists is asked. */
export function meterItems({ items }: Pick<SheetStep, 'items'>): {
  readonly readings: readonly ItemOf<'read'>[];
  readonly confirmed: readonly ItemOf<'confirm'>[];
  readonly notes: readonly ItemOf<'note'>[];
} {
  return {
    readings: items.filter(
      (item): item is ItemOf<'read'> =>
        item.kind === 'read' &&
        item.mayBeNotPossible &&
        (READ_AT_METER.includes(item.quantity) ||
          (item.quantity === 'heatingValueMjPerM3' && item.meets.includes(CLOCKING))),
    ),
    confirmed: items.filter(
      (item): item is ItemOf<'confirm'> =>
        item.kind === 'confirm' && item.notApplicable && item.meets.includes(CLOCKING),
    ),
    notes: items.filter(
      (item): item is ItemOf<'note'> => item.kind === 'note' && item.mayBeNotPossible && item.meets.includes(CLOCKING),
    ),
  };
}
