/** With which instrument, and by whom: chosen once and remembered, changed with two keys. */
import { useId } from 'react';
import type { QuantityKey } from '../../../domain/quantity/quantities.ts';
import { instrumentKindFor } from '../instruments/instrumentKindFor.ts';
import { useRun } from '../state/RunContext.ts';

export function WhoAndWith({ quantity }: { readonly quantity: QuantityKey }) {
  const { view, instruments, measuredById, chooseMeasuredBy } = useRun();
  const kind = instrumentKindFor(quantity);
  const withId = useId();
  const byId = useId();
  const chosen = instruments.inHand(kind);
  const ofKind = instruments.list.filter((one) => one.kind === kind);
  const others = instruments.list.filter((one) => one.kind !== kind);
  return (
    <div className="run-who-and-with">
      {kind === null ? null : (
        <span>
          <label htmlFor={withId}>with</label>
          <select
            id={withId}
            value={chosen ?? ''}
            onChange={(event) => instruments.choose(kind, event.currentTarget.value || null)}
          >
            <option value="">no instrument named</option>
            {[...ofKind, ...others].map((one) => (
              <option key={one.instrumentId} value={one.instrumentId}>
                {one.label} ({one.serial}){dueWords(one.calibrationDueOn)}
              </option>
            ))}
          </select>
        </span>
      )}
      <span>
        <label htmlFor={byId}>read by</label>
        <select id={byId} value={measuredById} onChange={(event) => chooseMeasuredBy(event.currentTarget.value)}>
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

function dueWords(dueOn: string | null): string {
  if (dueOn === null) return ', calibration unknown';
  return dueOn < new Date().toISOString().slice(0, 10) ? ', OUT OF DATE' : '';
}
