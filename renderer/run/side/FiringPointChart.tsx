/** CO₂ and O₂ at each firing point inside the sheet's band: a picture for the eye, and the same as a table for the ear. */
import { quantitySpec } from '../../../domain/quantity/quantities.ts';
import { useRun } from '../state/RunContext.ts';
import { figures } from '../words/figures.ts';
import { drawnSpan, type FiringPointRow, firingPointRows } from './firingPointRows.ts';

const WIDTH = 260;
const HEIGHT = 150;
const TOP = 12;
const BOTTOM = 30;
const LEFT = 34;

export function FiringPointChart() {
  const { view } = useRun();
  const { sheet, record } = view;
  const charts = (['co2DryVolPct', 'o2DryVolPct'] as const).flatMap((quantity) => {
    const rows = firingPointRows(sheet, record, record.fuel, quantity);
    const span = drawnSpan(rows);
    return span === null ? [] : [{ quantity, rows, span }];
  });
  if (charts.length === 0) return null;
  return (
    <section className="run-side-part" aria-label="Firing points">
      <h2>Firing points</h2>
      {charts.map(({ quantity, rows, span }) => (
        <figure key={quantity} className="run-chart">
          <figcaption>{quantitySpec(quantity).label}, % of the dry flue gas; band as on the sheet</figcaption>
          <Picture rows={rows} span={span} />
          <table className="run-unseen">
            <caption>{quantitySpec(quantity).label} by firing point</caption>
            <tbody>
              {rows.map((row) => (
                <tr key={row.firingPoint}>
                  <th scope="row">{row.label}</th>
                  <td>{row.samples.map((one) => figures(one.value)).join(', ') || 'not read'}</td>
                  <td>
                    sheet: {row.min === null ? 'no lower' : figures(row.min)} to{' '}
                    {row.max === null ? 'no upper' : figures(row.max)}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </figure>
      ))}
    </section>
  );
}

function Picture({
  rows,
  span,
}: {
  readonly rows: readonly FiringPointRow[];
  readonly span: readonly [number, number];
}) {
  const [low, high] = span;
  const y = (value: number) => TOP + ((high - value) / (high - low)) * (HEIGHT - TOP - BOTTOM);
  const columnWidth = (WIDTH - LEFT) / rows.length;
  const x = (index: number) => LEFT + (index + 0.5) * columnWidth;
  const lastPoints = rows.flatMap((row, index) => {
    const last = row.samples.at(-1);
    return last === undefined ? [] : [`${x(index)},${y(last.value)}`];
  });
  return (
    <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} width="100%" aria-hidden="true" focusable="false">
      {[low, (low + high) / 2, high].map((tick) => (
        <g key={tick}>
          <line className="run-chart-line" x1={LEFT} x2={WIDTH} y1={y(tick)} y2={y(tick)} />
          <text className="run-chart-text" x={LEFT - 4} y={y(tick) + 4} textAnchor="end">
            {tick.toFixed(1)}
          </text>
        </g>
      ))}
      {rows.map((row, index) => (
        <g key={row.firingPoint}>
          {row.min === null && row.max === null ? null : (
            <rect
              className="run-chart-band"
              x={x(index) - columnWidth * 0.32}
              width={columnWidth * 0.64}
              y={y(row.max ?? high)}
              height={Math.max(1, y(row.min ?? low) - y(row.max ?? high))}
            />
          )}
          <text className="run-chart-text" x={x(index)} y={HEIGHT - 10} textAnchor="middle">
            {row.label}
          </text>
        </g>
      ))}
      {lastPoints.length > 1 ? <polyline className="run-chart-trace" points={lastPoints.join(' ')} /> : null}
      {rows.flatMap((row, index) =>
        row.samples.map((one) => (
          <circle
            key={one.readingId}
            className={one === row.samples.at(-1) ? 'run-chart-dot' : 'run-chart-earlier'}
            cx={x(index)}
            cy={y(one.value)}
            r={one === row.samples.at(-1) ? 5 : 3}
          />
        )),
      )}
    </svg>
  );
}
