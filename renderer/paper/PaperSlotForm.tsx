/** One line of the paper: its boxes, kept on Enter, and the way to say that it was not possible. */
import { Button, NativeSelect, TextInput } from '@mantine/core';
import { useState } from 'react';
import type { RecordedInstrument } from '../../domain/procedure/runRecord.ts';
import { entryUnits } from '../../domain/quantity/entryUnits.ts';
import { preferredUnit, type UnitSystem } from '../../domain/quantity/preferredUnit.ts';
import { readTime } from '../form/readTime.ts';
import { instrumentChoices } from '../run/instruments/instrumentChoices.ts';
import type { PaperBox, PaperSlot, Written } from './paperSlots.ts';

export type PaperDefaults = { readonly at: string; readonly instrumentFor: (box: PaperBox) => string };

export function PaperSlotForm({
  slot,
  unitSystem,
  instruments,
  defaults,
  error,
  onKeep,
}: {
  readonly slot: PaperSlot;
  readonly unitSystem: UnitSystem;
  readonly instruments: readonly RecordedInstrument[];
  readonly defaults: PaperDefaults;
  readonly error: string | null;
  readonly onKeep: (written: Written, values: Readonly<Record<string, string>>) => void;
}) {
  const [values, setValues] = useState<Readonly<Record<string, string>>>({});
  const [problem, setProblem] = useState<string | null>(null);
  const amount = slot.boxes.find((box) => box.kind === 'amount');
  const set = (name: string, value: string) => {
    setValues((before) => ({ ...before, [name]: value }));
    setProblem(null);
  };
  const shown = (box: PaperBox) => values[box.name] ?? (box.name === 'at' ? defaults.at : '');

  const keep = () => {
    const read: Record<string, string> = { ...values };
    for (const box of slot.boxes) {
      if (box.kind !== 'time') continue;
      const time = readTime(shown(box));
      if (time === undefined) return setProblem(`${box.label}: “${shown(box)}” is no time of day. Example: 14:05.`);
      if (time !== null) read[box.name] = time;
    }
    if (amount !== undefined) read['instrument'] ??= defaults.instrumentFor(amount);
    const reason = values['reason']?.trim() ?? '';
    const at = read['at'] ?? read['from'] ?? '';
    const written: Written | null =
      reason === '' ? slot.write(read) : at === '' ? null : { kind: 'answer', value: null, reason, at };
    if (written === null) return setProblem('A box is still empty.');
    onKeep(written, read);
  };

  return (
    <form
      className="paper-slot"
      aria-label={slot.label}
      onSubmit={(event) => {
        event.preventDefault();
        keep();
      }}
    >
      <p>
        <strong>{slot.label}</strong>
      </p>
      <div className="lo-fields">
        {slot.boxes.map((box) =>
          box.kind === 'choice' ? (
            <NativeSelect
              key={box.name}
              label={box.label}
              value={values[box.name] ?? ''}
              data={[{ value: '', label: '…' }, ...box.options]}
              onChange={(event) => set(box.name, event.currentTarget.value)}
            />
          ) : (
            <TextInput
              key={box.name}
              label={box.label}
              autoComplete="off"
              inputMode={box.kind === 'amount' ? 'decimal' : undefined}
              value={shown(box)}
              onChange={(event) => set(box.name, event.currentTarget.value)}
            />
          ),
        )}
        {amount === undefined ? null : (
          <>
            <NativeSelect
              label="Unit"
              value={values['unit'] ?? preferredUnit(amount.quantity, unitSystem).symbol}
              data={entryUnits(amount.quantity).map(({ symbol }) => ({ value: symbol, label: symbol || 'number' }))}
              onChange={(event) => set('unit', event.currentTarget.value)}
            />
            {instrumentChoices(amount.quantity, instruments).length === 0 ? null : (
              <NativeSelect
                label="With"
                value={values['instrument'] ?? defaults.instrumentFor(amount)}
                data={[
                  { value: '', label: 'no instrument named' },
                  ...instrumentChoices(amount.quantity, instruments).map((one) => ({
                    value: one.instrumentId,
                    label: `${one.label} (${one.serial})`,
                  })),
                ]}
                onChange={(event) => set('instrument', event.currentTarget.value)}
              />
            )}
          </>
        )}
        {slot.mayBeNotPossible ? (
          <TextInput
            label="or not possible, because"
            autoComplete="off"
            value={values['reason'] ?? ''}
            onChange={(event) => set('reason', event.currentTarget.value)}
          />
        ) : null}
      </div>
      {(problem ?? error) === null ? null : (
        <p className="paper-problem" role="alert">
          {problem ?? error}
        </p>
      )}
      <Button type="submit" variant="default">
        Keep<span className="lo-hidden"> {slot.label}</span>
      </Button>
    </form>
  );
}
