/** What was read here the last time, faint and beside the box: to compare with, never to take over. */
import { formatQuantity } from '../../../domain/quantity/formatQuantity.ts';
import type { QuantityKey } from '../../../domain/quantity/quantities.ts';
import { dayWords } from '../../kit/dayWords.ts';
import { useRun } from '../state/RunContext.ts';

export function LastTime({ quantity, point }: { readonly quantity: QuantityKey; readonly point: string | null }) {
  const { past, unitSystem } = useRun();
  const last = past.at(-1)?.readings.findLast((one) => one.quantity === quantity && one.point === point);
  if (last === undefined) return null;
  const { text, unit } = formatQuantity(quantity, last.valueOwn, unitSystem);
  return (
    <span className="run-last-time">
      last time {last.comparator === '=' ? '' : last.comparator}
      {text}
      {unit === '' ? '' : ` ${unit}`}, {dayWords(last.measuredAt.slice(0, 10))}
    </span>
  );
}
