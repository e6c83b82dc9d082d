/** The step's readings beside those of the first visit and of the last one, and how far they have moved. */
import type { SheetStep } from '../../../domain/procedure/modelSheet.ts';
import { type Comparison, compareVisits, type TrendRow } from '../../../domain/trend/compareVisits.ts';
import { readingsToCompare } from '../../../domain/trend/readingsToCompare.ts';
import { TREND_LABELS } from '../../../domain/trend/symptoms.ts';
import { TREND_UNITS } from '../../../domain/trend/trendQuantity.ts';
import { type TrendValue, trendKey } from '../../../domain/trend/trendValues.ts';
import { dayWords } from '../../kit/dayWords.ts';
import { QuantityText } from '../../kit/QuantityText.tsx';
import { JOB_KIND_WORDS } from '../../kit/tradeWords.ts';
import { useRun } from '../state/RunContext.ts';
import { movementWords } from '../words/movementWords.ts';
import { pointWords } from '../words/pointWords.ts';
import './earlierVisits.css';

export function EarlierVisits({ step }: { readonly step: SheetStep }) {
  const { view, past } = useRun();
  const { record, sheet } = view;
  if (past.length === 0) return null;
  const here = record.readings.filter((one) => one.stepKey === step.key);
  const shown = new Set(here.map((one) => one.readingId));
  const rows = compareVisits({
    past,
    fuel: record.fuel,
    readings: readingsToCompare({ ...record, readings: here }),
    firingPoints: sheet.firingPoints.map((point) => point.key),
    state: 'left',
  }).filter(
    (row) => (row.baseline !== null || row.last !== null) && row.now.readings.some((one) => shown.has(one.readingId)),
  );
  if (rows.length === 0) return null;
  const baseline = rows.flatMap((row) => row.baseline ?? [])[0]?.earlier;
  const last = rows.flatMap((row) => row.last ?? [])[0]?.earlier;
  return (
    <section className="run-side-part" aria-label="Against earlier visits">
      <h2>Against earlier visits</h2>
      <table className="run-earlier">
        <thead>
          <tr>
            <th scope="col">Reading</th>
            {baseline === undefined ? null : <th scope="col">{visitWords(baseline)}</th>}
            {last === undefined ? null : <th scope="col">{visitWords(last)}</th>}
            <th scope="col">now</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={trendKey(row)}>
              <th scope="row">
                {TREND_LABELS[row.trend]}
                {row.point === null ? '' : `, ${pointWords(row.point, sheet).toLowerCase()}`}
              </th>
              {baseline === undefined ? null : <Then comparison={row.baseline} on={baseline.on} />}
              {last === undefined ? null : <Then comparison={row.last} on={last.on} />}
              <td>
                <Amount value={row.now} />
                <span className="run-earlier-moved" data-moved={isMoved(row)}>
                  {movementWords(row.last ?? row.baseline)}
                </span>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function isMoved(row: TrendRow): boolean {
  const movement = (row.last ?? row.baseline)?.movement;
  return movement === 'up' || movement === 'down';
}

function visitWords({ kind, on }: Comparison['earlier']): string {
  return `${JOB_KIND_WORDS[kind]} ${dayWords(on)}`;
}

function Then({ comparison, on }: { readonly comparison: Comparison | null; readonly on: string }) {
  if (comparison === null) return <td className="lo-faint">not read</td>;
  const { earlier } = comparison;
  return (
    <td>
      <Amount value={earlier.value} />
      {/* Read at another visit than the one the column is named for. */}
      {earlier.on === on ? null : <span className="run-earlier-moved">{dayWords(earlier.on)}</span>}
    </td>
  );
}

function Amount({ value }: { readonly value: TrendValue }) {
  const quantity = TREND_UNITS[value.trend];
  return (
    <>
      {value.comparator === '=' ? '' : `${value.comparator} `}
      {quantity === null ? value.value.toFixed(2) : <QuantityText quantity={quantity} value={value.value} />}
    </>
  );
}
