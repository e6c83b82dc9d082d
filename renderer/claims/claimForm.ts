/** A claim as a form holds it. Amounts are typed in the currency itself and kept in its smallest unit. */
import { readNumberText } from '../../domain/quantity/readNumberText.ts';
import type { ClaimFields } from '../../electron/contract/history.ts';
import type { FormReader } from '../form/FormReader.ts';
import { dayWords } from '../kit/dayWords.ts';
import { keyOf } from '../kit/tradeWords.ts';

export const PART_OUTCOME_WORDS = {
  granted: 'granted',
  'granted-in-part': 'granted in part',
  refused: 'refused',
} as const;

export type ClaimForm = {
  readonly partNumber: string;
  readonly partName: string;
  readonly openedOn: string;
  readonly sentOn: string;
  readonly partReturnedOn: string;
  readonly claimNumber: string;
  readonly decidedOn: string;
  readonly state: string;
  readonly currency: string;
  readonly parts: string;
  readonly partsOutcome: string;
  readonly partsGranted: string;
  readonly labour: string;
  readonly labourOutcome: string;
  readonly labourGranted: string;
  readonly refusedBecause: string;
  readonly note: string;
};

/** Where makers pay in one currency; elsewhere it is typed. ISO 3166 and ISO 4217. */
const CURRENCY_OF: Readonly<Record<string, string>> = {
  CA: 'CAD',
  US: 'USD',
  GB: 'GBP',
  IE: 'EUR',
  FR: 'EUR',
  ES: 'EUR',
};

export function emptyClaim(today: string, country: string): ClaimForm {
  return {
    partNumber: '',
    partName: '',
    openedOn: dayWords(today),
    sentOn: '',
    partReturnedOn: '',
    claimNumber: '',
    decidedOn: '',
    state: 'standing',
    currency: CURRENCY_OF[country] ?? '',
    parts: '',
    partsOutcome: '',
    partsGranted: '',
    labour: '',
    labourOutcome: '',
    labourGranted: '',
    refusedBecause: '',
    note: '',
  };
}

export function claimToForm(claim: ClaimFields): ClaimForm {
  const day = (on: string | null) => (on === null ? '' : dayWords(on));
  const amount = (minorUnits: number | null) => amountText(minorUnits, claim.currency);
  return {
    partNumber: claim.partNumber,
    partName: claim.partName ?? '',
    openedOn: dayWords(claim.openedOn),
    sentOn: day(claim.sentOn),
    partReturnedOn: day(claim.partReturnedOn),
    claimNumber: claim.claimNumber ?? '',
    decidedOn: day(claim.decidedOn),
    state: claim.isWithdrawn ? 'withdrawn' : 'standing',
    currency: claim.currency ?? '',
    parts: amount(claim.partsMinorUnits),
    partsOutcome: claim.partsOutcome ?? '',
    partsGranted: amount(claim.partsGrantedMinorUnits),
    labour: amount(claim.labourMinorUnits),
    labourOutcome: claim.labourOutcome ?? '',
    labourGranted: amount(claim.labourGrantedMinorUnits),
    refusedBecause: claim.refusedBecause ?? '',
    note: claim.note ?? '',
  };
}

export function claimFromForm(form: ClaimForm, reader: FormReader): ClaimFields {
  const currency = reader.optional(form.currency.toUpperCase());
  const amount = (field: keyof ClaimForm) => readMinorUnits(field, form[field], currency, reader);
  return {
    partNumber: form.partNumber,
    partName: reader.optional(form.partName),
    openedOn: reader.neededDay('openedOn', form.openedOn),
    sentOn: reader.day('sentOn', form.sentOn),
    partReturnedOn: reader.day('partReturnedOn', form.partReturnedOn),
    claimNumber: reader.optional(form.claimNumber),
    decidedOn: reader.day('decidedOn', form.decidedOn),
    isWithdrawn: form.state === 'withdrawn',
    currency,
    partsMinorUnits: amount('parts'),
    partsOutcome: keyOf(PART_OUTCOME_WORDS, form.partsOutcome),
    partsGrantedMinorUnits: amount('partsGranted'),
    labourMinorUnits: amount('labour'),
    labourOutcome: keyOf(PART_OUTCOME_WORDS, form.labourOutcome),
    labourGrantedMinorUnits: amount('labourGranted'),
    refusedBecause: reader.optional(form.refusedBecause),
    note: reader.optional(form.note),
  };
}

/** How many decimals a currency has, by ISO 4217 as the computer knows it; two where it is not known. */
export function currencyDecimals(currency: string | null): number {
  if (currency === null || !/^[A-Z]{3}$/u.test(currency)) return 2;
  return new Intl.NumberFormat('en', { style: 'currency', currency }).resolvedOptions().maximumFractionDigits ?? 2;
}

export function amountText(minorUnits: number | null, currency: string | null): string {
  if (minorUnits === null) return '';
  const decimals = currencyDecimals(currency);
  return (minorUnits / 10 ** decimals).toFixed(decimals);
}

function readMinorUnits(
  field: keyof ClaimForm,
  text: string,
  currency: string | null,
  reader: FormReader,
): number | null {
  if (text.trim() === '') return null;
  const read = readNumberText(text);
  const [value, other] = read?.candidates ?? [];
  if (read === null || value === undefined || read.rest !== '' || read.comparator !== '=' || value < 0) {
    reader.fail(field, 'Not an amount. Example: 385.00');
    return null;
  }
  if (other !== undefined) {
    reader.fail(field, `${value} or ${other}? Write it without a thousands mark.`);
    return null;
  }
  const minorUnits = value * 10 ** currencyDecimals(currency);
  if (Math.abs(minorUnits - Math.round(minorUnits)) > 1e-6) {
    reader.fail(field, 'More decimals than this currency has.');
    return null;
  }
  return Math.round(minorUnits);
}
