/** A button for what is hard to take back: the first press says what will happen, the second does it. No dialog, no hunting. */
import { Button, Group, Stack } from '@mantine/core';
import { type ReactNode, useState } from 'react';
import { Note } from './Note.tsx';
import { useAskFocus } from './useAskFocus.ts';

export function ConfirmUndo({
  label,
  confirmLabel,
  children,
  isBusy = false,
  isDisabled = false,
  onConfirm,
}: {
  readonly label: string;
  readonly confirmLabel: string;
  /** What will happen, and what can be taken back. */
  readonly children: ReactNode;
  readonly isBusy?: boolean;
  readonly isDisabled?: boolean;
  readonly onConfirm: () => Promise<void> | void;
}) {
  const [isAsking, setIsAsking] = useState(false);
  const { question, opener } = useAskFocus(isAsking);
  if (!isAsking) {
    return (
      <Button
        ref={opener}
        variant="default"
        // In a column of fields it stays a button, and no bar across.
        style={{ alignSelf: 'flex-start' }}
        disabled={isDisabled}
        onClick={() => setIsAsking(true)}
      >
        {label}
      </Button>
    );
  }
  return (
    <Note tone="caution" isSpoken>
      <Stack gap="sm">
        <div ref={question} tabIndex={-1} style={{ outline: 'none' }}>
          {children}
        </div>
        <Group gap="sm">
          <Button
            color="ember"
            loading={isBusy}
            onClick={async () => {
              await onConfirm();
              setIsAsking(false);
            }}
          >
            {confirmLabel}
          </Button>
          <Button variant="default" onClick={() => setIsAsking(false)}>
            Leave it
          </Button>
        </Group>
      </Stack>
    </Note>
  );
}
