/** What each column probably means: as kept for the instrument, else by the few signs that mean one thing everywhere. */
import { entryUnits } from '../quantity/entryUnits.ts';
import type { QuantityKey } from '../quantity/quantities.ts';
import { findUnit } from '../quantity/unitText.ts';
import type { ExportColumn, ExportMapping } from './exportMapping.ts';
import type { ExportTable } from './exportTable.ts';

export function proposeMapping(table: ExportTable, kept: ExportMapping | null): ExportMapping {
  return {
    columns: table.headings.map((heading, index) => {
      const known = kept?.columns.find((column) => column.heading === heading);
      return known ?? proposedColumn(heading, table.units[index] ?? null);
    }),
    decimalSign: kept?.decimalSign ?? null,
    dayOrder: kept?.dayOrder ?? null,
  };
}

/** The unit of a column: what the file says where that is a unit of the quantity, else the quantity's own. */
export function unitOfColumn(quantity: QuantityKey, unitText: string | null): string {
  return (unitText === null ? undefined : findUnit(quantity, unitText)?.symbol) ?? entryUnits(quantity)[0].symbol;
}

const SIGNS: readonly (readonly [RegExp, QuantityKey])[] = [
  [/^o(2|₂)$/u, 'o2DryVolPct'],
  [/^co(2|₂)$/u, 'co2DryVolPct'],
  [/^co$/u, 'coPpm'],
];
const TIMES = /^(?:date|time|date[ /]*time|datum|zeit|uhrzeit|heure|fecha|hora)$/u;

function proposedColumn(heading: string, unitText: string | null): ExportColumn {
  const name = heading
    .replace(/\s*[[(][^\])]*[\])]\s*$/u, '')
    .trim()
    .toLowerCase();
  if (TIMES.test(name)) return { heading, means: 'time' };
  // Some write the unit behind the sign without a bracket: `O2 %`.
  const [, sign = name, bareUnit = null] = /^(\S+)\s+(\S+)$/u.exec(name) ?? [];
  const unit = unitText ?? bareUnit;
  const quantity = SIGNS.find(([known]) => known.test(sign))?.[1];
  // CO in per cent or mg/m³ is not the ppm this sign is known for.
  if (quantity === undefined || (unit !== null && findUnit(quantity, unit) === undefined))
    return { heading, means: 'nothing' };
  return { heading, means: 'quantity', quantity, unit: unitOfColumn(quantity, unit) };
}
