/** One of a short list, bound to a field of a form. A plain select: one key jumps to an option, and a phone knows it too. */
import { NativeSelect } from '@mantine/core';
import type { FieldOf } from './fieldKeys.ts';
import { patchOf } from './patchOf.ts';
import type { DraftForm } from './useDraftForm.ts';

export type Option<T extends string = string> = { readonly value: T; readonly label: string };

export function SelectField<V extends object>({
  form,
  name,
  label,
  options,
  description,
  isNeeded = false,
  emptyLabel,
}: {
  readonly form: DraftForm<V>;
  readonly name: FieldOf<V, string>;
  readonly label: string;
  readonly options: readonly Option[];
  readonly description?: string;
  readonly isNeeded?: boolean;
  /** Offers "not known" as an answer of its own. */
  readonly emptyLabel?: string;
}) {
  const data = emptyLabel === undefined ? [...options] : [{ value: '', label: emptyLabel }, ...options];
  return (
    <NativeSelect
      label={label}
      description={description}
      required={isNeeded}
      error={form.errors[name]}
      value={String(form.values[name])}
      data={data}
      onChange={(event) => form.set(patchOf(name, event.currentTarget.value))}
    />
  );
}
