/** An instrument as a form holds it, with its data sheet: accuracy and range per quantity. */
import type { QuantityKey } from '../../domain/quantity/quantities.ts';
import { readNumberText } from '../../domain/quantity/readNumberText.ts';
import type { Instrument } from '../../electron/contract/people.ts';
import type { FormReader } from '../form/FormReader.ts';
import { keyOf } from '../kit/tradeWords.ts';
import { INSTRUMENT_WORDS, USUAL_QUANTITIES } from './instrumentWords.ts';

export type DataRow = { readonly abs: string; readonly relPct: string; readonly max: string };
export type InstrumentForm = {
  readonly kind: string;
  readonly label: string;
  readonly serial: string;
  readonly keptById: string;
  /** By quantity. */
  readonly data: Readonly<Record<string, DataRow>>;
};

export const NO_DATA: DataRow = { abs: '', relPct: '', max: '' };

export const NO_INSTRUMENT: InstrumentForm = { kind: 'analyser', label: '', serial: '', keptById: '', data: {} };

export function instrumentToForm(instrument: Instrument): InstrumentForm {
  const quantities = new Set([...Object.keys(instrument.accuracy), ...Object.keys(instrument.rangeMax)]);
  return {
    kind: instrument.kind,
    label: instrument.label,
    serial: instrument.serial,
    keptById: instrument.keptById ?? '',
    data: Object.fromEntries(
      [...quantities].map((quantity) => [
        quantity,
        {
          abs: textOf(instrument.accuracy[quantity]?.abs),
          relPct: textOf(instrument.accuracy[quantity]?.relPct),
          max: textOf(instrument.rangeMax[quantity]),
        },
      ]),
    ),
  };
}

export function instrumentFromForm(values: InstrumentForm, reader: FormReader) {
  const kind = keyOf(INSTRUMENT_WORDS, values.kind) ?? 'other';
  return {
    kind,
    label: values.label,
    serial: values.serial,
    keptById: reader.optional(values.keptById),
    ...dataSheet(quantitiesOf(values), values.data, reader),
  };
}

/** What instruments of the kind usually measure, and whatever else its data sheet names. */
export function quantitiesOf(values: InstrumentForm): readonly QuantityKey[] {
  const usual = USUAL_QUANTITIES[keyOf(INSTRUMENT_WORDS, values.kind) ?? 'other'];
  const others = Object.keys(values.data).filter(
    (quantity) => !usual.some((one) => one === quantity) && isNamed(values.data[quantity]),
  );
  return [...usual, ...(others as QuantityKey[])];
}

function isNamed(row: DataRow | undefined): boolean {
  return row !== undefined && `${row.abs}${row.relPct}${row.max}`.trim() !== '';
}

function textOf(value: number | undefined): string {
  return value === undefined ? '' : String(value);
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
