/** One cell of an instrument's export as a reading, under the same rules as what is typed; `>4000` stays "over 4000". */
import { parseTyped, type TypedProblem, type TypedValue } from '../quantity/parseTyped.ts';
import type { QuantityKey } from '../quantity/quantities.ts';
import { ok, type Result } from '../result.ts';
import type { ExportMapping } from './exportMapping.ts';

/** null: the instrument wrote that it has nothing. */
export function readExportCell(
  quantity: QuantityKey,
  cell: string,
  unit: string,
  decimalSign: ExportMapping['decimalSign'],
): Result<TypedValue, TypedProblem> | null {
  if (isNothing(cell)) return null;
  const read = parseTyped(quantity, withOneDecimalSign(cell, decimalSign), unit);
  // Kept as it stands in the file.
  return read.ok ? ok({ ...read.value, typedText: cell.trim() }) : read;
}

/** Dashes, dots and "n/a" are how instruments write a missing value. */
export function isNothing(cell: string): boolean {
  return /^(?:[-–—_.*\s]*|n\.?\/?a\.?)$/iu.test(cell.trim());
}

/** With the file's decimal sign known, the other mark only sets thousands apart. */
function withOneDecimalSign(cell: string, decimalSign: ExportMapping['decimalSign']): string {
  if (decimalSign === null) return cell;
  const thousands = decimalSign === 'point' ? /(?<=\d),(?=\d{3}(?!\d))/gu : /(?<=\d)\.(?=\d{3}(?!\d))/gu;
  const joined = cell.replaceAll(thousands, '');
  // One decimal sign with three digits after it reads as thousands too; a fourth digit settles it.
  return joined.replace(/(\d)[.,](\d{3})(?!\d)/u, '$1.$20');
}
