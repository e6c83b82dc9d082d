/** The fields of an instrument and its data sheet, from which every reading's uncertainty follows. */
import { TextInput } from '@mantine/core';
import { entryUnits } from '../../domain/quantity/entryUnits.ts';
import { type QuantityKey, quantitySpec } from '../../domain/quantity/quantities.ts';
import { SelectField } from '../form/SelectField.tsx';
import { TextField } from '../form/TextField.tsx';
import type { DraftForm } from '../form/useDraftForm.ts';
import { optionsOf } from '../kit/tradeWords.ts';
import { useOperation } from '../operations/useOperation.ts';
import { type DataRow, type InstrumentForm, NO_DATA, quantitiesOf } from './instrumentForm.ts';
import { INSTRUMENT_WORDS } from './instrumentWords.ts';

export function InstrumentFieldset({ form }: { readonly form: DraftForm<InstrumentForm> }) {
  const staff = useOperation('staff.list', {});
  const quantities = quantitiesOf(form.values);
  return (
    <>
      <div className="lo-fields">
        <SelectField form={form} name="kind" label="Kind" options={optionsOf(INSTRUMENT_WORDS)} />
        <TextField form={form} name="label" label="Called" placeholder="analyser, van 2" isNeeded />
        <TextField form={form} name="serial" label="Serial number" isNeeded />
        <SelectField
          form={form}
          name="keptById"
          label="Kept by"
          options={
            staff.state === 'ready' ? staff.value.map(({ staffId, name }) => ({ value: staffId, label: name })) : []
          }
          emptyLabel="Nobody in particular"
        />
      </div>
      {quantities.length === 0 ? null : <DataSheet form={form} quantities={quantities} />}
    </>
  );
}

function DataSheet({
  form,
  quantities,
}: {
  readonly form: DraftForm<InstrumentForm>;
  readonly quantities: readonly QuantityKey[];
}) {
  const { data } = form.values;
  const change = (quantity: QuantityKey, patch: Partial<DataRow>) =>
    form.set({ data: { ...data, [quantity]: { ...(data[quantity] ?? NO_DATA), ...patch } } });
  return (
    <fieldset className="lo-fieldset">
      <legend>From its data sheet, as far as it measures them</legend>
      <div className="lo-pairs">
        {quantities.map((quantity) => {
          const row = data[quantity] ?? NO_DATA;
          const { label } = quantitySpec(quantity);
          const unit = entryUnits(quantity)[0].symbol;
          return (
            <div key={quantity} className="lo-data-row">
              <div>{label}</div>
              <TextInput
                label={
                  <>
                    ± {unit}
                    <span className="lo-hidden"> {label}</span>
                  </>
                }
                inputMode="decimal"
                autoComplete="off"
                value={row.abs}
                error={form.errors[`data.${quantity}.abs`]}
                onChange={(event) => change(quantity, { abs: event.currentTarget.value })}
              />
              <TextInput
                label={
                  <>
                    and ± % of reading<span className="lo-hidden"> {label}</span>
                  </>
                }
                inputMode="decimal"
                autoComplete="off"
                value={row.relPct}
                error={form.errors[`data.${quantity}.relPct`]}
                onChange={(event) => change(quantity, { relPct: event.currentTarget.value })}
              />
              <TextInput
                label={
                  <>
                    Range up to, {unit}
                    <span className="lo-hidden"> {label}</span>
                  </>
                }
                inputMode="decimal"
                autoComplete="off"
                value={row.max}
                error={form.errors[`data.${quantity}.max`]}
                onChange={(event) => change(quantity, { max: event.currentTarget.value })}
              />
            </div>
          );
        })}
      </div>
    </fieldset>
  );
}
