/** What the sheet wants of a column of samples, short enough for its head; where it stands is said below the table. */
import { preferredUnit } from '../../../domain/quantity/preferredUnit.ts';
import type { QuantityKey } from '../../../domain/quantity/quantities.ts';
import { limitsFor } from '../field/limitsFor.ts';
import { useRun } from '../state/RunContext.ts';
import { limitWords, stopWords } from '../words/limitWords.ts';

export function SeriesLimits({
  quantity,
  firingPoint,
}: {
  readonly quantity: QuantityKey;
  readonly firingPoint: string;
}) {
  const { view, unitSystem } = useRun();
  const limits = limitsFor(view.sheet, view.record.fuel, quantity, firingPoint);
  const unit = preferredUnit(quantity, unitSystem);
  return (
    <span className="run-column-limit">
      {limits.length === 0
        ? 'no limit'
        : limits.map((limit) => (
            <span key={`${limit.severity} ${limit.min} ${limit.max}`}>
              {limit.severity === 'stop'
                ? `stop ${stopWords(quantity, limit, unit)}`
                : limitWords(quantity, limit, unit)}{' '}
            </span>
          ))}
    </span>
  );
}
