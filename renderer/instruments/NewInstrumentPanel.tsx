/** A new instrument with its data sheet: accuracy and range per quantity, from which every reading's uncertainty follows. */
import { TextInput } from '@mantine/core';
import { entryUnits } from '../../domain/quantity/entryUnits.ts';
import { type QuantityKey, quantitySpec } from '../../domain/quantity/quantities.ts';
import { readNumberText } from '../../domain/quantity/readNumberText.ts';
import { DraftFormFrame } from '../form/DraftFormFrame.tsx';
import type { FormReader } from '../form/FormReader.ts';
import { SelectField } from '../form/SelectField.tsx';
import { TextField } from '../form/TextField.tsx';
import { type DraftForm, useDraftForm } from '../form/useDraftForm.ts';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Panel } from '../kit/Panel.tsx';
import { keyOf, optionsOf } from '../kit/tradeWords.ts';
import { useOperation } from '../operations/useOperation.ts';
import { INSTRUMENT_WORDS, USUAL_QUANTITIES } from './instrumentWords.ts';

type DataRow = { readonly abs: string; readonly relPct: string; readonly max: string };
type InstrumentForm = {
  readonly kind: string;
  readonly label: string;
  readonly serial: string;
  readonly keptById: string;
  /** By quantity. */
  readonly data: Readonly<Record<string, DataRow>>;
};

const NO_DATA: DataRow = { abs: '', relPct: '', max: '' };

export function NewInstrumentPanel({ onDone }: { readonly onDone: () => void }) {
  const staff = useOperation('staff.list', {});
  const form = useDraftForm<InstrumentForm, 'instruments.create'>({
    draftKey: 'new-instrument',
    operation: 'instruments.create',
    initial: { kind: 'analyser', label: '', serial: '', keptById: '', data: {} },
    toInput: (values, reader) => {
      const kind = keyOf(INSTRUMENT_WORDS, values.kind) ?? 'other';
      return {
        kind,
        label: values.label,
        serial: values.serial,
        keptById: reader.optional(values.keptById),
        ...dataSheet(USUAL_QUANTITIES[kind], values.data, reader),
      };
    },
    onDone,
  });
  const kind = keyOf(INSTRUMENT_WORDS, form.values.kind) ?? 'other';
  return (
    <Panel title="New instrument">
      <DraftFormFrame
        form={form}
        submitLabel="Add instrument"
        failure={<ErrorText error={form.error} />}
        onLeave={onDone}
      >
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
        {USUAL_QUANTITIES[kind].length === 0 ? null : <DataSheet form={form} quantities={USUAL_QUANTITIES[kind]} />}
      </DraftFormFrame>
    </Panel>
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

function dataSheet(quantities: readonly QuantityKey[], data: InstrumentForm['data'], reader: FormReader) {
  const accuracy: Record<string, { abs: number; relPct: number }> = {};
  const rangeMax: Record<string, number> = {};
  for (const quantity of quantities) {
    const row = data[quantity] ?? NO_DATA;
    const abs = readPlainNumber(`data.${quantity}.abs`, row.abs, reader);
    const relPct = readPlainNumber(`data.${quantity}.relPct`, row.relPct, reader);
    const max = readPlainNumber(`data.${quantity}.max`, row.max, reader);
    // One of the two parts given means the data sheet names no other: it adds nothing.
    if (abs !== null || relPct !== null) accuracy[quantity] = { abs: abs ?? 0, relPct: relPct ?? 0 };
    if (max !== null) rangeMax[quantity] = max;
  }
  return { accuracy, rangeMax };
}

function readPlainNumber(field: string, text: string, reader: FormReader): number | null {
  if (text.trim() === '') return null;
  const read = readNumberText(text);
  if (read !== null && read.rest === '' && read.comparator === '=' && read.candidates.length === 1) {
    if (read.candidates[0] >= 0) return read.candidates[0];
    reader.fail(field, 'Without a sign.');
    return null;
  }
  reader.fail(field, 'A plain number. Example: 0.2 or 0,2.');
  return null;
}
