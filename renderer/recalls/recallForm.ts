/** A notice as a form holds it: models and serial ranges one a line. */
import type { RecallFields } from '../../electron/contract/recalls.ts';
import type { FormReader } from '../form/FormReader.ts';
import { showAmount, type TypedAmount } from '../form/typedAmount.ts';
import { dayWords } from '../kit/dayWords.ts';

export type RecallForm = {
  readonly title: string;
  readonly number: string;
  readonly source: string;
  readonly maker: string;
  readonly models: string;
  readonly serialRanges: string;
  readonly altitudeMinM: TypedAmount;
  readonly altitudeMaxM: TypedAmount;
  readonly issuedOn: string;
  readonly whatToDo: string;
  readonly untilSettled: string;
};

export function recallToForm(recall: RecallFields | null, today: string, altitudeUnit: string): RecallForm {
  const altitude = (own: number | null): TypedAmount => showAmount('length', own, altitudeUnit, 0);
  return {
    title: recall?.title ?? '',
    number: recall?.number ?? '',
    source: recall?.source ?? '',
    maker: recall?.maker ?? '',
    models: (recall?.models ?? []).join('\n'),
    serialRanges: (recall?.serialRanges ?? []).map(rangeText).join('\n'),
    altitudeMinM: altitude(recall?.altitudeMinM ?? null),
    altitudeMaxM: altitude(recall?.altitudeMaxM ?? null),
    issuedOn: dayWords(recall?.issuedOn ?? today),
    whatToDo: recall?.whatToDo ?? '',
    untilSettled: recall?.mayFire === true ? 'may-run' : 'off',
  };
}

export function recallFromForm(form: RecallForm, reader: FormReader): RecallFields {
  return {
    title: form.title,
    number: reader.optional(form.number),
    source: form.source,
    maker: form.maker,
    models: linesOf(form.models),
    serialRanges: linesOf(form.serialRanges).map(readRange),
    altitudeMinM: reader.amount('altitudeMinM', form.altitudeMinM, 'length'),
    altitudeMaxM: reader.amount('altitudeMaxM', form.altitudeMaxM, 'length'),
    issuedOn: reader.neededDay('issuedOn', form.issuedOn),
    whatToDo: form.whatToDo,
    mayFire: form.untilSettled === 'may-run',
  };
}

export function rangeText({ from, to }: { readonly from: string; readonly to: string }): string {
  return from === to ? from : `${from} to ${to}`;
}

/** `A100 to A200`, `A100 – A200`, `A100...A200`; one serial alone is a range of one. A hyphen without blanks belongs to the serial. */
export function readRange(line: string): { readonly from: string; readonly to: string } {
  const [from = '', to] = line.split(/\s+(?:to|bis|à|a|-)\s+|\s*(?:–|—|…|\.{2,3})\s*/iu);
  return { from: from.trim(), to: (to ?? from).trim() };
}

function linesOf(text: string): string[] {
  return text
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '');
}
