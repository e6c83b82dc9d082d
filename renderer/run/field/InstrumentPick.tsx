/** Which instrument it was, only where somebody has one to name: one of one is a key to name and a key to take back. */
import { useEffect, useId, useRef } from 'react';
import type { RecordedInstrument } from '../../../domain/procedure/runRecord.ts';
import { KeyHint } from '../../kit/KeyHint.tsx';
import { useAppStatus } from '../../operations/AppStatus.tsx';
import { isAltKey } from '../focus/isAltKey.ts';
import { isOutOfDate } from '../instruments/instrumentChoices.ts';

export function InstrumentPick({
  label,
  choices,
  chosenId,
  onChoose,
}: {
  /** `with`, `tested with` */
  readonly label: string;
  readonly choices: readonly RecordedInstrument[];
  readonly chosenId: string | null;
  readonly onChoose: (instrumentId: string | null) => void;
}) {
  const { today } = useAppStatus();
  const id = useId();
  const chosen = choices.find((one) => one.instrumentId === chosenId);
  const latest = useRef({ choices, chosenId, onChoose });
  useEffect(() => {
    latest.current = { choices, chosenId, onChoose };
  });
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (!isAltKey(event, 'N') || event.defaultPrevented) return;
      event.preventDefault();
      const { choices: all, chosenId: before, onChoose: choose } = latest.current;
      // One after the other, and none at the end.
      choose(all[all.findIndex((one) => one.instrumentId === before) + 1]?.instrumentId ?? null);
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, []);
  if (choices.length === 0) return null;
  const named = (one: RecordedInstrument) =>
    `${one.label} (${one.serial})${isOutOfDate(one, today) ? ', OUT OF DATE' : ''}`;
  const [only] = choices;
  if (choices.length === 1 && only !== undefined)
    return (
      <span>
        {chosen === undefined ? null : (
          <span>
            {label} <b>{named(only)}</b>
          </span>
        )}
        <button
          type="button"
          className="run-quiet-button"
          aria-keyshortcuts="Alt+N"
          onClick={() => onChoose(chosen === undefined ? only.instrumentId : null)}
        >
          <span>{chosen === undefined ? `${label} ${named(only)}?` : 'without it'}</span> <KeyHint keys="Alt+N" />
        </button>
      </span>
    );
  return (
    <span>
      <label htmlFor={id}>
        {label} <KeyHint keys="Alt+N" />
      </label>
      <select
        id={id}
        aria-keyshortcuts="Alt+N"
        value={chosen?.instrumentId ?? ''}
        onChange={(event) => onChoose(event.currentTarget.value || null)}
      >
        <option value="">no instrument named</option>
        {choices.map((one) => (
          <option key={one.instrumentId} value={one.instrumentId}>
            {named(one)}
          </option>
        ))}
      </select>
    </span>
  );
}
