/** The same letters as a table, for a word processor's own mail merge. */
import { csvFile, csvText } from '../csvCell.ts';

export type MergeRow = {
  readonly name: string;
  readonly street: string | null;
  readonly postcode: string | null;
  readonly city: string | null;
  readonly region: string | null;
  readonly country: string | null;
  readonly email: string | null;
  readonly phone: string | null;
  readonly language: string;
  readonly appliance: string;
  readonly serial: string;
  readonly aboutOn: string | null;
  readonly subject: string;
  readonly body: string;
};

const COLUMNS = [
  'name',
  'street',
  'postcode',
  'city',
  'region',
  'country',
  'email',
  'phone',
  'language',
  'appliance',
  'serial',
  'aboutOn',
  'subject',
  'body',
] as const satisfies readonly (keyof MergeRow)[];

export function mailMergeCsv(rows: readonly MergeRow[]): string {
  return csvFile([[...COLUMNS], ...rows.map((row) => COLUMNS.map((column) => csvText(row[column] ?? '')))]);
}
