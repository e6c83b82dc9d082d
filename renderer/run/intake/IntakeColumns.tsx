/** What each column of the file is: a quantity in its unit, the time, or nothing that is wanted. */
import type { ExportColumn, ExportMapping } from '../../../domain/intake/exportMapping.ts';
import type { ExportLayout, ExportTable } from '../../../domain/intake/exportTable.ts';
import { unitOfColumn } from '../../../domain/intake/proposeMapping.ts';
import { instrumentKindFor } from '../../../domain/judgement/proof/instrumentKindFor.ts';
import { entryUnits } from '../../../domain/quantity/entryUnits.ts';
import { isQuantityKey, type QuantityKey, quantitySpec } from '../../../domain/quantity/quantities.ts';
import type { InstrumentKind } from '../../../domain/vocabulary/people.ts';

export function IntakeColumns({
  table,
  mapping,
  layout,
  wanted,
  instrumentKind,
  onLayout,
  onChange,
}: {
  readonly table: ExportTable;
  readonly mapping: ExportMapping;
  readonly layout: ExportLayout | null;
  /** What this run asks for anywhere. */
  readonly wanted: ReadonlySet<QuantityKey>;
  /** Of the instrument the file comes from: what it can have read stands first. */
  readonly instrumentKind: InstrumentKind | null;
  readonly onLayout: (layout: ExportLayout | null) => void;
  readonly onChange: (mapping: ExportMapping) => void;
}) {
  const setColumn = (column: ExportColumn) =>
    onChange({ ...mapping, columns: mapping.columns.map((one) => (one.heading === column.heading ? column : one)) });
  const choose = (heading: string, chosen: string, unitText: string | null) => {
    if (chosen === 'time' || chosen === 'nothing') setColumn({ heading, means: chosen });
    else if (isQuantityKey(chosen))
      setColumn({ heading, means: 'quantity', quantity: chosen, unit: unitOfColumn(chosen, unitText) });
  };
  const own = [...wanted].filter((quantity) => instrumentKindFor(quantity) === instrumentKind);
  const groups = [
    { label: 'This instrument reads', quantities: own },
    { label: 'Anything else', quantities: [...wanted].filter((quantity) => !own.includes(quantity)) },
  ].filter(({ quantities }) => quantities.length > 0);
  return (
    <fieldset className="run-intake-columns">
      <legend>What the columns are</legend>
      <ul>
        {mapping.columns.map((column, index) => {
          const unitText = table.units[index] ?? null;
          return (
            <li key={column.heading}>
              <label>
                <b>{column.heading}</b>
                {unitText === null ? '' : ` (${unitText})`}{' '}
                <select
                  value={column.means === 'quantity' ? column.quantity : column.means}
                  onChange={(event) => choose(column.heading, event.currentTarget.value, unitText)}
                >
                  <option value="nothing">not wanted</option>
                  <option value="time">day or time</option>
                  {groups.map(({ label, quantities }) => (
                    <optgroup key={label} label={label}>
                      {quantities.map((quantity) => (
                        <option key={quantity} value={quantity}>
                          {quantitySpec(quantity).label}
                        </option>
                      ))}
                    </optgroup>
                  ))}
                </select>
              </label>
              {column.means === 'quantity' ? (
                <select
                  aria-label={`Unit of ${column.heading}`}
                  value={column.unit}
                  onChange={(event) => setColumn({ ...column, unit: event.currentTarget.value })}
                >
                  {entryUnits(column.quantity).map((unit) => (
                    <option key={unit.symbol} value={unit.symbol}>
                      {unit.symbol === '' ? 'no unit' : unit.symbol}
                    </option>
                  ))}
                </select>
              ) : null}
            </li>
          );
        })}
      </ul>
      <div className="run-box-row">
        <label>
          Decimals after{' '}
          <select
            value={mapping.decimalSign ?? ''}
            onChange={(event) => onChange({ ...mapping, decimalSign: decimalSign(event.currentTarget.value) })}
          >
            <option value="">as each number says</option>
            <option value="point">a point (5.2)</option>
            <option value="comma">a comma (5,2)</option>
          </select>
        </label>
        {mapping.columns.some((column) => column.means === 'time') ? (
          <label>
            03/04 is{' '}
            <select
              value={mapping.dayOrder ?? ''}
              onChange={(event) => onChange({ ...mapping, dayOrder: dayOrder(event.currentTarget.value) })}
            >
              <option value="">not said</option>
              <option value="day-first">3 April</option>
              <option value="month-first">4 March</option>
            </select>
          </label>
        ) : null}
        <label>
          The file is{' '}
          <select value={layout ?? ''} onChange={(event) => onLayout(layoutOf(event.currentTarget.value))}>
            <option value="">as it looks</option>
            <option value="columns">columns under headings</option>
            <option value="lines">a name and a value on each line</option>
          </select>
        </label>
      </div>
    </fieldset>
  );
}

function decimalSign(chosen: string): ExportMapping['decimalSign'] {
  return chosen === 'point' || chosen === 'comma' ? chosen : null;
}

function dayOrder(chosen: string): ExportMapping['dayOrder'] {
  return chosen === 'day-first' || chosen === 'month-first' ? chosen : null;
}

function layoutOf(chosen: string): ExportLayout | null {
  return chosen === 'columns' || chosen === 'lines' ? chosen : null;
}
