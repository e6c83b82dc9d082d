/** With which instrument, and by whom: chosen once and remembered. A change is about the number in the box as well. */
import { useEffect, useId, useRef } from 'react';
import { instrumentKindFor } from '../../../domain/judgement/proof/instrumentKindFor.ts';
import type { RecordedReading } from '../../../domain/procedure/runRecord.ts';
import type { QuantityKey } from '../../../domain/quantity/quantities.ts';
import { KeyHint } from '../../kit/KeyHint.tsx';
import { isAltKey } from '../focus/isAltKey.ts';
import { worthNaming } from '../instruments/instrumentChoices.ts';
import { useRun } from '../state/RunContext.ts';
import { InstrumentPick } from './InstrumentPick.tsx';
import { nextToMeasure } from './nextToMeasure.ts';

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
  const kind = instrumentKindFor(quantity);
  const byId = useId();
  const inHand = instruments.inHand(kind);
  const instrumentId = stored === null ? (inHand.state === 'chosen' ? inHand.instrumentId : null) : stored.instrumentId;
  const readBy = stored?.measuredById ?? measuredById;
  const choosePerson = (staffId: string) => {
    chooseMeasuredBy(staffId);
    onChanged?.();
  };
  const latest = useRef({ readBy, choosePerson, view });
  useEffect(() => {
    latest.current = { readBy, choosePerson, view };
  });
  // Heard wherever the keyboard is in the run: the one with the instrument calls out, the one at the laptop types on.
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (!isAltKey(event, 'M')) return;
      event.preventDefault();
      const { readBy: before, choosePerson: choose, view: shown } = latest.current;
      const next = nextToMeasure(before, shown.visit.crew, shown.people);
      if (next !== null) choose(next);
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, []);
  return (
    <div className="run-who-and-with">
      {kind === null ? null : (
        <InstrumentPick
          label="with"
          choices={worthNaming(quantity, instruments.list, instrumentId)}
          chosenId={instrumentId}
          onChoose={(chosenId) => {
            instruments.choose(kind, chosenId);
            onChanged?.();
          }}
        />
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
