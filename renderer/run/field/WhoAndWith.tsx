/** With which instrument, and by whom: chosen once and remembered. A change is about the number in the box as well. */
import { useEffect, useId, useRef } from 'react';
import type { RecordedReading } from '../../../domain/procedure/runRecord.ts';
import type { QuantityKey } from '../../../domain/quantity/quantities.ts';
import { KeyHint } from '../../kit/KeyHint.tsx';
import { useAppStatus } from '../../operations/AppStatus.tsx';
import { isAltKey } from '../focus/isAltKey.ts';
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
  const readBy = stored?.measuredById ?? measuredById;
  const choosePerson = (staffId: string) => {
    chooseMeasuredBy(staffId);
    onChanged?.();
  };
  const latest = useRef({ readBy, choosePerson, people: view.people });
  useEffect(() => {
    latest.current = { readBy, choosePerson, people: view.people };
  });
  // Heard wherever the keyboard is in the run: the one with the instrument calls out, the one at the laptop types on.
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (!isAltKey(event, 'M')) return;
      event.preventDefault();
      const { readBy: before, choosePerson: choose, people } = latest.current;
      const next = people[(people.findIndex(({ staffId }) => staffId === before) + 1) % people.length];
      if (next !== undefined) choose(next.staffId);
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, []);
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
        <label htmlFor={byId}>
          read by <KeyHint keys="Alt+M" />
        </label>
        <select
          id={byId}
          aria-keyshortcuts="Alt+M"
          value={readBy}
          onChange={(event) => choosePerson(event.currentTarget.value)}
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
