/** The dates of a new appliance as its form holds them: each as typed, with how we know. */
import { COVER_DATES, type CoverDate } from '../../domain/procedure/modelSheet.ts';
import type { FormReader } from '../form/FormReader.ts';
import { readImpreciseDay } from '../form/impreciseDay.ts';

export type DateRow = { readonly text: string; readonly source: string };
export type DateRows = Readonly<Record<CoverDate, DateRow>>;

export const NO_DATES: DateRows = {
  made: { text: '', source: 'plate' },
  sold: { text: '', source: '' },
  installed: { text: '', source: '' },
  started: { text: '', source: '' },
  occupied: { text: '', source: '' },
  'title-transfer': { text: '', source: '' },
};

/** What is wrong is said once, at its own field: such a date is left out, for the contract would complain of it again. */
export function datesFromForm(dates: DateRows, reader: FormReader) {
  return COVER_DATES.flatMap((kind) => {
    const { text, source } = dates[kind];
    if (text.trim() === '') return [];
    const read = readImpreciseDay(text);
    if (!read.ok) {
      reader.fail(`dates.${kind}`, read.why);
      return [];
    }
    if (source.trim() === '') {
      reader.fail(`dates.${kind}.source`, 'Needed: plate, invoice, told by …');
      return [];
    }
    return [{ kind, ...read.date, source }];
  });
}
