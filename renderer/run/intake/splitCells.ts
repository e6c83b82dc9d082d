/** Pasted or opened text as lines of cells, whichever mark stands between them. */
import Papa from 'papaparse';

export function splitCells(text: string): readonly (readonly string[])[] {
  const lines = text.split(/\r\n|\r|\n/u).filter((line) => line.trim() !== '');
  const mark = cellMark(lines);
  if (mark === null) return lines.map(splitLine);
  return Papa.parse<string[]>(lines.join('\n'), { delimiter: mark, newline: '\n', skipEmptyLines: 'greedy' }).data;
}

const MARKS = [';', '\t', '|', ','] as const;

/** The first mark that most lines have: a comma comes last, for it may be a decimal sign. */
function cellMark(lines: readonly string[]): string | null {
  return (
    MARKS.find(
      (mark) => lines.filter((line) => line.includes(mark)).length * 2 > lines.length && !isDecimal(mark, lines),
    ) ?? null
  );
}

function isDecimal(mark: string, lines: readonly string[]): boolean {
  return mark === ',' && lines.every((line) => !line.replaceAll(/\d,\d/gu, '').includes(','));
}

/** `O2: 5,2 %` or `O2    5.2 %`: a name, a number and its unit between colons, equals signs or wide gaps. */
function splitLine(line: string): readonly string[] {
  const named =
    /^\s*(\p{L}[^:=]*?)\s*(?:[:=]\s*|\s{2,})(.*)$/u.exec(line) ?? /^\s*(\p{L}\S*)\s+([<>]?[-+]?\d.*)$/u.exec(line);
  if (named === null) return line.trim().split(/\s{2,}/u);
  const [, name = '', rest = ''] = named;
  const value = /^([<>]?\s*[-+]?[\d.,]+)\s*(\D.*)?$/u.exec(rest.trim());
  return value === null ? [name, ...rest.trim().split(/\s{2,}/u)] : [name, value[1] ?? '', value[2] ?? ''];
}
