/** With which instrument, and by whom: chosen once and remembered. A change is about the number in the box as well. */
import { useId } from 'react';
import type { RecordedReading } from '../../../domain/procedure/runRecord.ts';
import type { QuantityKey } from '../../../domain/quantity/quantities.ts';
import { useAppStatus } from '../../operations/AppStatus.tsx';
import { instrumentChoices, isOutOfDate } from '../instruments/instrumentChoices.ts';
import { instrumentKindFor } from '../instruments/instrumentKindFor.ts';
import { useRun } from '../state/RunContext.ts';

export function WhoAndWith({
  quantity,
  stored = null,
  onChanged,
}: {
  readonly quantity: QuantityKey;
  /** What the box shows is this reading: it was read with that, by them. */
  readonly stored?: RecordedReading | null;
  readonly onChanged?: () => void;
}) {
  const { view, instruments, measuredById, chooseMeasuredBy } = useRun();
  const { today } = useAppStatus();
  const kind = instrumentKindFor(quantity);
  const withId = useId();
  const byId = useId();
  const inHand = instruments.inHand(kind);
  const instrumentId = stored === null ? (inHand.state === 'chosen' ? inHand.instrumentId : null) : stored.instrumentId;
  return (
    <div className="run-who-and-with">
      {kind === null ? null : (
        <span>
          <label htmlFor={withId}>with</label>
          <select
            id={withId}
            value={instrumentId ?? ''}
            onChange={(event) => {
              instruments.choose(kind, event.currentTarget.value || null);
              onChanged?.();
            }}
          >
            <option value="">no instrument named</option>
            {instrumentChoices(quantity, instruments.list).map((one) => (
              <option key={one.instrumentId} value={one.instrumentId}>
                {one.label} ({one.serial}){isOutOfDate(one, today) ? ', OUT OF DATE' : ''}
              </option>
            ))}
          </select>
        </span>
      )}
      <span>
        <label htmlFor={byId}>read by</label>
        <select
          id={byId}
          value={stored?.measuredById ?? measuredById}
          onChange={(event) => {
            chooseMeasuredBy(event.currentTarget.value);
            onChanged?.();
          }}
        >
          {view.people.map((person) => (
            <option key={person.staffId} value={person.staffId}>
              {person.name}
            </option>
          ))}
        </select>
      </span>
    </div>
  );
}
