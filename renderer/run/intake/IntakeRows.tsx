/** The rows of the file as they would go in: when, what was read, and where to. Nothing is written yet. */
import type { ExportRow } from '../../../domain/intake/readExport.ts';
import { quantitySpec } from '../../../domain/quantity/quantities.ts';
import { instantWords } from '../../kit/dayWords.ts';
import { useRun } from '../state/RunContext.ts';
import { problemWords } from '../words/problemWords.ts';
import type { Slot } from './slots.ts';

export function IntakeRows({
  rows,
  slots,
  goesTo,
  keepsTimes,
  onKeepsTimes,
  onChoose,
}: {
  readonly rows: readonly ExportRow[];
  readonly slots: readonly Slot[];
  readonly goesTo: readonly (Slot | null)[];
  readonly keepsTimes: boolean;
  readonly onKeepsTimes: (keeps: boolean) => void;
  readonly onChoose: (index: number, slotKey: string | null) => void;
}) {
  const { view } = useRun();
  const { timeZone } = view.record.site;
  return (
    <>
      {rows.some((row) => row.measuredAt !== null) ? (
        <label className="run-check">
          <input type="checkbox" checked={keepsTimes} onChange={(event) => onKeepsTimes(event.currentTarget.checked)} />
          Keep the file’s times (leave them out only where the instrument’s clock is wrong)
        </label>
      ) : null}
      <div className="run-intake-rows">
        <table>
          <caption className="run-unseen">Rows of the file</caption>
          <thead>
            <tr>
              <th scope="col">Time</th>
              <th scope="col">Read</th>
              <th scope="col">Goes to</th>
            </tr>
          </thead>
          <tbody>
            {rows.map((row, index) => {
              const slot = goesTo[index] ?? null;
              return (
                <tr key={rowName(index)}>
                  <td>
                    {row.measuredAt === null
                      ? 'none in the file'
                      : row.measuredAt.ok
                        ? instantWords(row.measuredAt.value, timeZone)
                        : TIME_TROUBLE[row.measuredAt.error.code](row.measuredAt.error.text)}
                  </td>
                  <td>
                    {row.values.map(({ quantity, cell, unit, read }) => (
                      <span
                        key={quantity}
                        className="run-intake-value"
                        data-stays={slot !== null && !slot.quantities.includes(quantity)}
                      >
                        {quantitySpec(quantity).label} <b>{cell.trim()}</b> {unit}
                        {read.ok ? '' : `: ${problemWords(read.error)}`}
                      </span>
                    ))}
                  </td>
                  <td>
                    <select
                      aria-label={`Row ${index + 1} goes to`}
                      value={slot?.key ?? ''}
                      onChange={(event) => onChoose(index, event.currentTarget.value || null)}
                    >
                      <option value="">nowhere, left out</option>
                      {slots
                        .filter((one) => row.values.some(({ quantity }) => one.quantities.includes(quantity)))
                        .map((one) => (
                          <option key={one.key} value={one.key}>
                            {one.label}
                            {one.standing.length === 0 ? '' : ' (replaces what is there)'}
                          </option>
                        ))}
                    </select>
                  </td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </div>
    </>
  );
}

/** Rows have no name of their own: their place in the file is it. */
function rowName(index: number): string {
  return `row ${index + 1}`;
}

const TIME_TROUBLE = {
  'not-a-time': (text: string) => `“${text}” is no time`,
  'day-order-unknown': (text: string) => `${text}: say above whether the day or the month comes first`,
} as const;
