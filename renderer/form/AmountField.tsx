/** A number typed as text with its unit chosen beside it; a comma is as good as a point, a unit typed behind it wins. */
import { Input, NativeSelect } from '@mantine/core';
import { type ReactNode, useId } from 'react';
import type { Dimension } from '../../domain/quantity/quantities.ts';
import type { FieldOf } from './fieldKeys.ts';
import { patchOf } from './patchOf.ts';
import { amountUnits, type TypedAmount } from './typedAmount.ts';
import { unitByKey } from './unitByKey.ts';
import type { DraftForm } from './useDraftForm.ts';

export function AmountField<V extends object>({
  form,
  name,
  label,
  dimension,
  description,
  hint,
  isNeeded = false,
}: {
  readonly form: DraftForm<V>;
  readonly name: FieldOf<V, TypedAmount>;
  readonly label: string;
  readonly dimension: Dimension;
  readonly description?: string;
  /** Something worth a second look: never blocks. */
  readonly hint?: ReactNode;
  readonly isNeeded?: boolean;
}) {
  return (
    <AmountInput
      label={label}
      dimension={dimension}
      description={description}
      hint={hint}
      isNeeded={isNeeded}
      amount={form.values[name] as TypedAmount}
      error={form.errors[name]}
      onAmount={(amount) => form.set(patchOf<V, TypedAmount>(name, amount))}
    />
  );
}

export function AmountInput({
  label,
  dimension,
  description,
  hint,
  isNeeded = false,
  amount,
  error,
  onAmount,
}: {
  readonly label: string;
  readonly dimension: Dimension;
  readonly description?: string | undefined;
  readonly hint?: ReactNode;
  readonly isNeeded?: boolean;
  readonly amount: TypedAmount;
  readonly error?: string | undefined;
  readonly onAmount: (amount: TypedAmount) => void;
}) {
  const inputId = useId();
  const units = amountUnits(dimension);
  return (
    <div>
      <Input.Wrapper label={label} description={description} error={error} required={isNeeded} id={inputId}>
        <div className="lo-amount">
          <Input
            id={inputId}
            aria-keyshortcuts={units.length > 1 ? 'Alt+ArrowDown' : undefined}
            onKeyDown={(event) => {
              const unit = unitByKey(event, units, amount.unit);
              if (unit === null) return;
              event.preventDefault();
              onAmount({ text: amount.text, unit });
            }}
            inputMode="decimal"
            autoComplete="off"
            value={amount.text}
            error={error !== undefined}
            onChange={(event) => onAmount({ text: event.currentTarget.value, unit: amount.unit })}
          />
          {units.length > 1 ? (
            <NativeSelect
              // Typed behind the number, or by key from the number: as a stop of its own it would cost a key in every field.
              tabIndex={-1}
              aria-label={`${label}: unit`}
              value={amount.unit}
              data={[...units]}
              onChange={(event) => onAmount({ text: amount.text, unit: event.currentTarget.value })}
            />
          ) : (
            <span className="lo-faint">{units[0]}</span>
          )}
        </div>
      </Input.Wrapper>
      {hint ? (
        <div role="status" style={{ color: 'var(--lo-ochre)', marginBlockStart: '0.25rem' }}>
          {hint}
        </div>
      ) : null}
    </div>
  );
}
