/** What is wrong with a cell or row of a list, and what to do about it. */
import type { ImportIssueCode } from '../../domain/imports/importRow.ts';
import { dayWords } from '../kit/dayWords.ts';

const ISO_DAY = /\d{4}-\d{2}-\d{2}/g;

export function importIssueWords(code: ImportIssueCode, detail: string | null): string {
  return WORDS[code](detail ?? '');
}

const WORDS: Readonly<Record<ImportIssueCode, (detail: string) => string>> = {
  needed: (detail) =>
    detail === 'customerName'
      ? 'No column is the name of a customer. For a list of past services: serial number and day of service.'
      : 'Empty, and needed here.',
  'too-long': (detail) => `Too long: “${detail}”`,
  'line-break': () => 'Two lines in one cell; this can only be one.',
  'not-an-email': (detail) => `No e-mail address: “${detail}”`,
  'formula-cell': (detail) => `A formula, not a value: “${detail}”. Save the list with values.`,
  'spoiled-number': (detail) =>
    `“${detail}”: the spreadsheet shortened a long number, its digits are lost. Type it anew.`,
  'not-a-day': (detail) => `“${detail}” is no day here.`,
  'day-month-ambiguous': (detail) => `Day or month first? ${detail.replace(ISO_DAY, (on) => dayWords(on))}`,
  'short-year': (detail) => `“${detail}”: the year needs four figures.`,
  'day-in-future': (detail) => `“${detail}” is still to come.`,
  'not-a-number': (detail) => `“${detail}” is no amount with a known unit.`,
  'number-ambiguous': (detail) => `“${detail}” can mean two numbers. Write it without a thousands mark.`,
  'not-possible': (detail) => `“${detail}” is not possible here. Is the unit right?`,
  'unknown-word': (detail) => `“${detail}” is not one of the words known here.`,
  'too-many-cells': (detail) => `${detail} cells, more than there are headings. Is there a comma too many?`,
  'too-few-cells': (detail) => `Only ${detail} cells, fewer than there are headings.`,
  'dates-out-of-order': (detail) => `These dates cannot follow each other: ${detail.replace(' ', ' before ')}.`,
  'serial-twice': (detail) => `The same serial with other particulars stands higher up: ${detail}`,
  'serial-on-file': (detail) => `This appliance is on file already: ${detail}`,
  'serial-not-on-file': (detail) => `No appliance with the serial “${detail}” is on file.`,
  'serial-of-several': (detail) =>
    `Several appliances on file have the serial “${detail}”. Add a column with the maker.`,
  'number-of-two-customers': (detail) => `Customer number ${detail}: the two rows contradict each other.`,
};
