/** Several of a short list, as boxes to tick, bound to a list field of a form. */
import { Checkbox, Group } from '@mantine/core';
import type { Option } from './SelectField.tsx';

export function CheckGroup<T extends string>({
  label,
  options,
  values,
  error,
  onValues,
}: {
  readonly label: string;
  readonly options: readonly Option<T>[];
  readonly values: readonly T[];
  readonly error?: string | undefined;
  readonly onValues: (values: T[]) => void;
}) {
  return (
    <Checkbox.Group label={label} error={error} value={[...values]} onChange={onValues}>
      <Group gap="md" mt={4}>
        {options.map(({ value, label: optionLabel }) => (
          <Checkbox
            key={value}
            value={value}
            label={optionLabel}
            size="md"
            // The group itself cannot have the keyboard: its boxes carry the mark the form looks for.
            aria-invalid={error !== undefined}
            styles={{ body: { minHeight: '2.75rem', alignItems: 'center' } }}
          />
        ))}
      </Group>
    </Checkbox.Group>
  );
}
