/**
 * An instrument's export as a table, whatever its layout: columns under headings, or a list of "name, value, unit" lines.
 * The cells stay text; what a column means is for a person to say.
 */
import { readNumberText } from '../quantity/readNumberText.ts';

export type ExportTable = {
  readonly headings: readonly string[];
  /** What the file itself says of a column's unit. */
  readonly units: readonly (string | null)[];
  readonly rows: readonly (readonly string[])[];
};

export type ExportLayout = 'columns' | 'lines';

/** null: nothing in it looks like readings. Without a layout given, the one that fits better is taken. */
export function exportTable(
  cells: readonly (readonly string[])[],
  layout: ExportLayout | null = null,
): ExportTable | null {
  const lines = cells.map((row) => row.map((cell) => cell.trim())).filter((row) => row.some((cell) => cell !== ''));
  if (layout === 'lines' || (layout === null && looksLikeLines(lines))) return fromLines(lines);
  return fromColumns(lines) ?? (layout === null ? fromLines(lines) : null);
}

export function isNumberCell(cell: string): boolean {
  return readNumberText(cell) !== null;
}

type Line = readonly string[];

/** `O2 [%]`, `CO (ppm)`: the unit is set apart from the name. */
const UNIT_IN_HEADING = /^(.*?)\s*[[(]([^\])]{1,12})[\])]\s*$/u;

function fromColumns(lines: readonly Line[]): ExportTable | null {
  const at = lines.findIndex((line, index) => isHeadingLine(line) && hasNumberBelow(lines, index));
  const head = lines[at];
  if (head === undefined) return null;
  const below = lines.slice(at + 1);
  const unitLine = below[0] !== undefined && isUnitLine(below[0], head) ? below[0] : null;
  const rows = (unitLine === null ? below : below.slice(1)).filter((line) => line.some(isNumberCell));
  const named = head.map((cell) => UNIT_IN_HEADING.exec(cell));
  return {
    headings: uniqueNames(head),
    units: head.map((_, index) => unitLine?.[index] || named[index]?.[2] || null),
    rows: rows.map((line) => head.map((_, index) => line[index] ?? '')),
  };
}

function isHeadingLine(line: Line): boolean {
  return line.filter((cell) => cell !== '').length >= 2 && !line.some(isNumberCell);
}

/** The units may stand in a line of their own in between. */
function hasNumberBelow(lines: readonly Line[], index: number): boolean {
  return lines.slice(index + 1, index + 3).some((line) => line.some(isNumberCell));
}

function isUnitLine(line: Line, head: Line): boolean {
  const filled = line.filter((cell) => cell !== '');
  return (
    filled.length > 0 &&
    filled.length <= head.length &&
    filled.every((cell) => !isNumberCell(cell) && cell.length <= 12)
  );
}

/** Name first, a number second, at most a unit third. */
function looksLikeLines(lines: readonly Line[]): boolean {
  const named = lines.filter(isNamedValue);
  return named.length >= 2 && named.length * 2 >= lines.length;
}

function isNamedValue([name = '', value = '', unit = '', ...more]: Line): boolean {
  return /^\p{L}/u.test(name) && isNumberCell(value) && !isNumberCell(unit) && more.every((cell) => cell === '');
}

/** The same name again begins the next set of readings. */
function fromLines(lines: readonly Line[]): ExportTable | null {
  const headings: string[] = [];
  const units: (string | null)[] = [];
  const rows: string[][] = [];
  let current: string[] | null = null;
  for (const [name = '', value = '', unit = ''] of lines) {
    if (name === '' || value === '') continue;
    let column = headings.indexOf(name);
    if (column < 0) {
      column = headings.push(name) - 1;
      units.push(null);
    }
    if (current === null || current[column] !== undefined) {
      current = [];
      rows.push(current);
    }
    current[column] = value;
    units[column] ??= unit === '' ? null : unit;
  }
  const full = rows
    .filter((row) => row.some((cell) => cell !== undefined && isNumberCell(cell)))
    .map((row) => headings.map((_, index) => row[index] ?? ''));
  return full.length === 0 ? null : { headings, units, rows: full };
}

/** Two columns of one name are told apart, so that each can be given its own meaning. */
function uniqueNames(head: Line): readonly string[] {
  return head.map((cell, index) => {
    const name = cell === '' ? `column ${index + 1}` : cell;
    const earlier = head.slice(0, index).filter((other) => other === cell).length;
    return earlier === 0 ? name : `${name} (${earlier + 1})`;
  });
}
