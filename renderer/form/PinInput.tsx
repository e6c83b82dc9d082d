/** Four to eight digits, hidden while typed, big enough for a thumb, with the number pad on a touch screen. */
import { PasswordInput } from '@mantine/core';
import type { ReactNode, Ref } from 'react';

export function PinInput({
  label,
  value,
  onChange,
  error,
  description,
  ref,
}: {
  readonly label: string;
  readonly value: string;
  readonly onChange: (pin: string) => void;
  readonly error?: ReactNode;
  readonly description?: string;
  readonly ref?: Ref<HTMLInputElement>;
}) {
  return (
    <PasswordInput
      {...(ref === undefined ? {} : { ref })}
      label={label}
      // What is wrong says what is asked for: once is enough.
      description={error ? undefined : description}
      error={error}
      // The library marks the frame only: screen readers and the form look for it on the box itself.
      aria-invalid={Boolean(error)}
      value={value}
      inputMode="numeric"
      autoComplete="off"
      maxLength={8}
      onChange={(event) => onChange(event.currentTarget.value.replace(/\D/g, ''))}
    />
  );
}
