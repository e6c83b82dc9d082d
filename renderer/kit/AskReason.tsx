/** A button for what needs a reason, and sometimes a day: pressed, it says what will happen and asks for them. */
import { Button, Group, Stack, TextInput } from '@mantine/core';
import { type ReactNode, useState } from 'react';
import { readDay } from '../form/FormReader.ts';
import { dayWords } from './dayWords.ts';
import { Note } from './Note.tsx';
import { useAskFocus } from './useAskFocus.ts';

export function AskReason({
  label,
  confirmLabel,
  reasonLabel = 'Why',
  dayLabel,
  day = null,
  isBusy = false,
  children,
  onConfirm,
}: {
  readonly label: string;
  readonly confirmLabel: string;
  readonly reasonLabel?: string;
  /** Left out: no day is asked for, and an empty one comes back. */
  readonly dayLabel?: string;
  /** The day that is there to begin with. */
  readonly day?: string | null;
  readonly isBusy?: boolean;
  /** What will happen, and how it is taken back. */
  readonly children: ReactNode;
  /** True: it is done. Otherwise what was typed stays. */
  readonly onConfirm: (why: string, day: string) => Promise<boolean>;
}) {
  const [isAsking, setIsAsking] = useState(false);
  const { question, opener } = useAskFocus(isAsking);
  const [why, setWhy] = useState('');
  const [dayText, setDayText] = useState(day === null ? '' : dayWords(day));
  const [wrong, setWrong] = useState<{ readonly why?: string; readonly day?: string }>({});
  if (!isAsking) {
    return (
      <Button ref={opener} variant="default" style={{ alignSelf: 'flex-start' }} onClick={() => setIsAsking(true)}>
        {label}
      </Button>
    );
  }
  const send = async () => {
    const read = dayLabel === undefined ? null : readDay(dayText);
    const dayProblem = read === null ? undefined : read.ok ? (read.day === null ? 'Needed.' : undefined) : read.why;
    const found = {
      ...(why.trim() === '' ? { why: 'Needed.' } : {}),
      ...(dayProblem === undefined ? {} : { day: dayProblem }),
    };
    setWrong(found);
    if (Object.keys(found).length > 0) return;
    if (await onConfirm(why.trim(), read?.ok ? (read.day ?? '') : '')) setIsAsking(false);
  };
  return (
    <Note tone="caution" isSpoken>
      <form
        aria-label={label}
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          event.stopPropagation();
          void send();
        }}
      >
        <Stack gap="sm" ref={question}>
          <div>{children}</div>
          {dayLabel === undefined ? null : (
            <TextInput
              label={dayLabel}
              value={dayText}
              error={wrong.day}
              autoComplete="off"
              onChange={(event) => setDayText(event.currentTarget.value)}
            />
          )}
          <TextInput
            label={reasonLabel}
            value={why}
            error={wrong.why}
            autoComplete="off"
            onChange={(event) => setWhy(event.currentTarget.value)}
          />
          <Group gap="sm">
            <Button type="submit" color="ember" loading={isBusy}>
              {confirmLabel}
            </Button>
            <Button variant="default" onClick={() => setIsAsking(false)}>
              Leave it
            </Button>
          </Group>
        </Stack>
      </form>
    </Note>
  );
}
