/** One line or several of plain text, bound to a field of a form. */
import { Textarea, TextInput } from '@mantine/core';
import { useId } from 'react';
import type { FieldOf } from './fieldKeys.ts';
import { patchOf } from './patchOf.ts';
import type { DraftForm } from './useDraftForm.ts';

export function TextField<V extends object>({
  form,
  name,
  label,
  description,
  isNeeded = false,
  lines = 1,
  placeholder,
  autoComplete = 'off',
  autoFocus = false,
  suggestions,
}: {
  readonly form: DraftForm<V>;
  readonly name: FieldOf<V, string>;
  readonly label: string;
  readonly description?: string;
  readonly isNeeded?: boolean;
  readonly lines?: number;
  readonly placeholder?: string;
  readonly autoComplete?: string;
  readonly autoFocus?: boolean;
  /** Offered while typing; anything else may be typed too. */
  readonly suggestions?: readonly string[];
}) {
  const listId = useId();
  const shared = {
    label,
    description,
    placeholder,
    autoComplete,
    required: isNeeded,
    error: form.errors[name],
    value: String(form.values[name]),
    'data-autofocus': autoFocus || undefined,
  };
  return lines > 1 ? (
    <Textarea
      {...shared}
      rows={lines}
      className="lo-wide"
      onChange={(event) => form.set(patchOf(name, event.currentTarget.value))}
    />
  ) : (
    <>
      <TextInput
        {...shared}
        list={suggestions === undefined ? undefined : listId}
        onChange={(event) => form.set(patchOf(name, event.currentTarget.value))}
      />
      {suggestions === undefined ? null : (
        <datalist id={listId}>
          {suggestions.map((suggestion) => (
            <option key={suggestion} value={suggestion} />
          ))}
        </datalist>
      )}
    </>
  );
}
