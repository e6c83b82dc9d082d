/** One line of the paper: its boxes, kept on Enter, and the way to say that it was not possible. */
import { Button, Group, NativeSelect, TextInput } from '@mantine/core';
import { type ReactNode, useRef, useState } from 'react';
import { NONE_ANSWER } from '../../domain/procedure/progress/listProgress.ts';
import type { RecordedInstrument } from '../../domain/procedure/runRecord.ts';
import { entryUnits } from '../../domain/quantity/entryUnits.ts';
import { preferredUnit, type UnitSystem } from '../../domain/quantity/preferredUnit.ts';
import { readDay } from '../form/FormReader.ts';
import { readTime } from '../form/readTime.ts';
import { worthNaming } from '../run/instruments/instrumentChoices.ts';
import type { PaperBox, PaperSlot, Written } from './paperSlots.ts';
import { isLineBegun } from './typedValues.ts';
import { useTypedLine } from './useTypedLine.ts';

export type PaperDefaults = { readonly at: string; readonly instrumentFor: (box: PaperBox) => string };
type Values = Readonly<Record<string, string>>;

export function PaperSlotForm({
  slot,
  lineKey,
  unitSystem,
  instruments,
  defaults,
  error,
  onKeep,
  onListDone,
  children,
}: {
  readonly slot: PaperSlot;
  /** What is typed is kept under it until the line is. */
  readonly lineKey: string;
  readonly unitSystem: UnitSystem;
  readonly instruments: readonly RecordedInstrument[];
  readonly defaults: PaperDefaults;
  readonly error: string | null;
  /** Whether it was kept. */
  readonly onKeep: (written: Written, values: Values) => Promise<boolean>;
  /** Of a list that something is on: nothing more is to be added. */
  readonly onListDone: (() => void) | null;
  readonly children?: ReactNode;
}) {
  const { values, set, clear } = useTypedLine(lineKey);
  const [problem, setProblem] = useState<string | null>(null);
  const form = useRef<HTMLFormElement>(null);
  const amount = slot.boxes.find((box) => box.kind === 'amount');
  const boxes: readonly PaperBox[] =
    slot.isPhoto === true && slot.mayBeNotPossible ? [{ kind: 'time', name: 'at', label: 'Time' }] : slot.boxes;
  const type = (name: string, value: string) => {
    set(name, value);
    setProblem(null);
  };
  const shown = (box: PaperBox) => values[box.name] ?? (box.name === 'at' ? defaults.at : '');
  const named = amount === undefined ? '' : (values['instrument'] ?? defaults.instrumentFor(amount));
  const choices = amount === undefined ? [] : worthNaming(amount.quantity, instruments, named || null);

  /** Times and days as they are kept; a text that is none of them is said. */
  const read = (): Values | string => {
    const found: Record<string, string> = { ...values };
    for (const box of boxes) {
      if (box.kind === 'time') {
        const time = readTime(shown(box));
        if (time === undefined) return `${box.label}: “${shown(box)}” is no time of day. Example: 14:05.`;
        if (time !== null) found[box.name] = time;
      }
      if (box.kind === 'day' && shown(box).trim() !== '') {
        const day = readDay(shown(box));
        if (!day.ok) return `${box.label}: “${shown(box)}” is no day. Example: 4 Jul 2026.`;
        if (day.day !== null) found[box.name] = day.day;
      }
    }
    if (amount !== undefined && choices.length > 0) found['instrument'] = named;
    return found;
  };
  const keep = async (writtenOf: (found: Values) => Written | null) => {
    const found = read();
    if (typeof found === 'string') return setProblem(found);
    const written = writtenOf(found);
    if (written === null)
      return setProblem(
        slot.isPhoto === true ? 'Choose the photo, or say why it was not possible.' : 'A box is still empty.',
      );
    if (!(await onKeep(written, found))) return;
    clear(values);
    // A list stays for its next line.
    if (slot.noneWords !== undefined) form.current?.querySelector<HTMLElement>('select, input')?.focus();
  };
  /** What says that nothing (more) is to be listed must not take a line that is half typed with it. */
  const endList = (end: () => void) =>
    isLineBegun(values, boxes) ? setProblem('Keep this line or empty it first.') : end();
  const asAnswer =
    (value: string | null, reason: string | null) =>
    (found: Values): Written | null => {
      const at = found['at'] ?? found['from'] ?? '';
      return at === '' ? null : { kind: 'answer', value, reason, at };
    };
  const reason = values['reason']?.trim() ?? '';
  return (
    <form
      ref={form}
      className="paper-slot"
      aria-label={slot.label}
      onKeyDown={(event) => {
        // A list of choices does not send its form by itself.
        if (event.key !== 'Enter' || !(event.target instanceof HTMLSelectElement)) return;
        event.preventDefault();
        event.currentTarget.requestSubmit();
      }}
      onSubmit={(event) => {
        event.preventDefault();
        void keep(reason === '' ? slot.write : asAnswer(null, reason));
      }}
    >
      <p>
        <strong>{slot.label}</strong>
      </p>
      {children}
      <div className="lo-fields">
        {boxes.map((box) =>
          box.kind === 'choice' ? (
            <NativeSelect
              key={box.name}
              label={box.label}
              value={values[box.name] ?? ''}
              data={[{ value: '', label: '…' }, ...box.options]}
              onChange={(event) => type(box.name, event.currentTarget.value)}
            />
          ) : (
            <TextInput
              key={box.name}
              label={box.label}
              autoComplete="off"
              inputMode={box.kind === 'amount' ? 'decimal' : undefined}
              value={shown(box)}
              onChange={(event) => type(box.name, event.currentTarget.value)}
            />
          ),
        )}
        {amount === undefined ? null : (
          <>
            <NativeSelect
              label="Unit"
              value={values['unit'] ?? preferredUnit(amount.quantity, unitSystem).symbol}
              data={entryUnits(amount.quantity).map(({ symbol }) => ({ value: symbol, label: symbol || 'number' }))}
              onChange={(event) => type('unit', event.currentTarget.value)}
            />
            {choices.length === 0 ? null : (
              <NativeSelect
                label="With"
                value={named}
                data={[
                  { value: '', label: 'no instrument named' },
                  ...choices.map((one) => ({ value: one.instrumentId, label: `${one.label} (${one.serial})` })),
                ]}
                onChange={(event) => type('instrument', event.currentTarget.value)}
              />
            )}
          </>
        )}
        {slot.mayBeNotPossible ? (
          <TextInput
            label="or not possible, because"
            autoComplete="off"
            value={values['reason'] ?? ''}
            onChange={(event) => type('reason', event.currentTarget.value)}
          />
        ) : null}
      </div>
      {(problem ?? error) === null ? null : (
        <p className="paper-problem" role="alert">
          {problem ?? error}
        </p>
      )}
      <Group gap="sm">
        {boxes.length === 0 ? null : (
          <Button type="submit" variant="default">
            Keep<span className="lo-hidden"> {slot.label}</span>
          </Button>
        )}
        {slot.noneWords === undefined ? null : onListDone === null ? (
          <Button variant="default" onClick={() => endList(() => void keep(asAnswer(NONE_ANSWER, null)))}>
            {slot.noneWords}
          </Button>
        ) : (
          <Button variant="default" onClick={() => endList(onListDone)}>
            Nothing more on this list
          </Button>
        )}
      </Group>
    </form>
  );
}
