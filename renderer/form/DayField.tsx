/** A calendar day: typed in any usual way and read back with its month as a word, or picked from a calendar. */
import { ActionIcon, Button, Group, Popover, TextInput } from '@mantine/core';
import { DatePicker } from '@mantine/dates';
import { useState } from 'react';
import { dayWords } from '../kit/dayWords.ts';
import { readDay } from './FormReader.ts';
import type { FieldOf } from './fieldKeys.ts';
import { patchOf } from './patchOf.ts';
import type { DraftForm } from './useDraftForm.ts';

export function DayField<V extends object>({
  form,
  name,
  label,
  description,
  isNeeded = false,
}: {
  readonly form: DraftForm<V>;
  readonly name: FieldOf<V, string>;
  readonly label: string;
  readonly description?: string;
  readonly isNeeded?: boolean;
}) {
  return (
    <DayInput
      label={label}
      description={description}
      isNeeded={isNeeded}
      text={String(form.values[name])}
      error={form.errors[name]}
      onText={(text) => form.set(patchOf(name, text))}
    />
  );
}

export function DayInput({
  label,
  description,
  isNeeded = false,
  text,
  error,
  onText,
}: {
  readonly label: string;
  readonly description?: string | undefined;
  readonly isNeeded?: boolean;
  readonly text: string;
  readonly error?: string | undefined;
  readonly onText: (text: string) => void;
}) {
  const [isOpen, setIsOpen] = useState(false);
  const read = readDay(text);
  const day = read.ok ? read.day : null;
  const pick = (picked: string | null) => {
    if (picked !== null) onText(dayWords(picked));
    setIsOpen(false);
  };
  return (
    <div>
      <TextInput
        label={label}
        description={description}
        required={isNeeded}
        autoComplete="off"
        placeholder="4 Jul 2026"
        value={text}
        error={error}
        aria-keyshortcuts="Alt+ArrowDown"
        onChange={(event) => onText(event.currentTarget.value)}
        onKeyDown={(event) => {
          if (!event.altKey || event.key !== 'ArrowDown') return;
          event.preventDefault();
          setIsOpen(true);
        }}
        onBlur={() => {
          if (day !== null) onText(dayWords(day));
        }}
        rightSectionWidth={44}
        rightSection={
          <Popover opened={isOpen} onChange={setIsOpen} trapFocus position="bottom-end" withRoles={false}>
            <Popover.Target>
              <ActionIcon
                variant="subtle"
                size={42}
                // Whoever types needs no calendar: it is a key away, not a stop on the way.
                tabIndex={-1}
                aria-label={`${label}: calendar`}
                aria-expanded={isOpen}
                onClick={() => setIsOpen((before) => !before)}
              >
                <CalendarMark />
              </ActionIcon>
            </Popover.Target>
            <Popover.Dropdown aria-label={`${label}: calendar`} role="dialog">
              <DatePicker
                value={day}
                onChange={pick}
                {...(day === null ? {} : { defaultDate: day })}
                size="lg"
                hideOutsideDates
                ariaLabels={CALENDAR_LABELS}
              />
            </Popover.Dropdown>
          </Popover>
        }
      />
      {!read.ok && read.meanings.length > 0 ? (
        <Group gap="xs" mt="xs" role="group" aria-label={`${label}: which day?`}>
          {read.meanings.map((meaning) => (
            <Button key={meaning} variant="default" onClick={() => onText(dayWords(meaning))}>
              {dayWords(meaning)}
            </Button>
          ))}
        </Group>
      ) : null}
    </div>
  );
}

const CALENDAR_LABELS = {
  previousMonth: 'Month before',
  nextMonth: 'Month after',
  previousYear: 'Year before',
  nextYear: 'Year after',
  previousDecade: 'Ten years before',
  nextDecade: 'Ten years after',
};

function CalendarMark() {
  return (
    <svg width="20" height="20" viewBox="0 0 20 20" aria-hidden="true" focusable="false">
      <path d="M2.5 4.5h15v13h-15zM2.5 8.5h15M6.5 2v4M13.5 2v4" fill="none" stroke="currentColor" strokeWidth="1.6" />
    </svg>
  );
}
