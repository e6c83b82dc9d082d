/** A logged change in words: `planned on: 25 Nov 2026; duration min: 150`. Ids say nothing to a person and are left out. */
import { dayWords, instantWords } from './dayWords.ts';

export function changeKindWords(kind: string): string {
  return KIND_WORDS[kind] ?? kind;
}

export function changedFieldWords(fields: Readonly<Record<string, unknown>>): string {
  return Object.entries(fields)
    .filter(([field]) => !/(^id|Ids?|Hash|searchText)$/.test(field))
    .map(([field, value]) => `${nameWords(field)}: ${valueWords(value)}`)
    .join('; ');
}

const KIND_WORDS: Readonly<Record<string, string>> = { insert: 'added', update: 'changed', remove: 'removed' };

function nameWords(field: string): string {
  return field.replace(/([A-Z])/g, (capital) => ` ${capital.toLowerCase()}`).replace(/^phone e164$/, 'phone');
}

function valueWords(value: unknown): string {
  if (value === null || value === undefined || value === '') return 'none';
  if (value === true) return 'yes';
  if (value === false) return 'no';
  if (typeof value === 'object') return JSON.stringify(value);
  const text = String(value);
  if (/^\d{4}-\d{2}-\d{2}$/.test(text)) return dayWords(text);
  return /^\d{4}-\d{2}-\d{2}T[\d:.]+Z$/.test(text) ? instantWords(text) : text;
}
