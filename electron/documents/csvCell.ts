/**
 * One cell of a CSV file. A spreadsheet takes text that starts like a formula for one: such text gets an apostrophe in
 * front, which reading it back takes off again. Numbers are written by another function and stay numbers.
 */

export function csvText(text: string): string {
  const guarded = LOOKS_LIKE_FORMULA.test(text) ? `'${text}` : text;
  return /[",\r\n;\t]/u.test(guarded) || guarded !== guarded.trim() ? `"${guarded.replaceAll('"', '""')}"` : guarded;
}

/** Undoes what `csvText` put in front, and nothing else. */
export function csvTextBack(cell: string): string {
  return cell.startsWith("'") && LOOKS_LIKE_FORMULA.test(cell.slice(1)) ? cell.slice(1) : cell;
}

export function csvNumber(decimal: string | null): string {
  if (decimal === null) return '';
  if (!/^-?\d+(\.\d+)?$/.test(decimal)) throw new Error(`not a plain number: ${decimal}`);
  return decimal;
}

/** CRLF and a byte order mark: what spreadsheets expect of UTF-8 (RFC 4180 for the rest). */
export function csvFile(rows: readonly (readonly string[])[]): string {
  return `\ufeff${rows.map(csvLine).join('')}`;
}

export function csvLine(cells: readonly string[]): string {
  return `${cells.join(',')}\r\n`;
}

/** Also in full-width forms, after blanks, quotes or a byte order mark, and after apostrophes, so that it can be undone. */
const LOOKS_LIKE_FORMULA = /^[\s'"\ufeff]*[=+\-@\t\r\uff1d\uff0b\uff0d\uff20]|^[\s'"\ufeff]*[\t\r]/u;
