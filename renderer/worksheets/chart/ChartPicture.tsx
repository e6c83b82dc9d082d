/** A worksheet's chart: a picture for the eye, and the same as a table for the ear. */
import { useId } from 'react';
import { useUnitSystem } from '../../operations/AppStatus.tsx';
import type { Chart, ChartPoint } from './chart.ts';
import { type DrawnAxis, type DrawnChart, drawnChart } from './drawnChart.ts';

const WIDTH = 620;
const HEIGHT = 320;
const LEFT = 56;
const RIGHT = 16;
const TOP = 28;
const BOTTOM = 50;

export function ChartPicture({ chart }: { readonly chart: Chart }) {
  const unitSystem = useUnitSystem();
  const captionId = useId();
  const drawn = drawnChart(chart, unitSystem);
  if (drawn === null) return null;
  return (
    <figure className="lo-panel ws-chart" aria-labelledby={captionId}>
      <figcaption id={captionId}>{drawn.title}</figcaption>
      <Picture drawn={drawn} />
      <div className="ws-unseen">
        <Table drawn={drawn} />
      </div>
    </figure>
  );
}

function Picture({ drawn: { x, y, curves, marks } }: { readonly drawn: DrawnChart }) {
  const across = (value: number) => LEFT + ((value - x.from) / (x.to - x.from)) * (WIDTH - LEFT - RIGHT);
  const up = (value: number) => HEIGHT - BOTTOM - ((value - y.from) / (y.to - y.from)) * (HEIGHT - TOP - BOTTOM);
  const place = ([px, py]: ChartPoint) => `${across(px).toFixed(1)},${up(py).toFixed(1)}`;
  return (
    <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} width="100%" aria-hidden="true" focusable="false">
      {y.ticks.map(({ at, text }) => (
        <g key={at}>
          <line className="ws-grid" x1={LEFT} x2={WIDTH - RIGHT} y1={up(at)} y2={up(at)} />
          <text className="ws-tick" x={LEFT - 6} y={up(at) + 4} textAnchor="end">
            {text}
          </text>
        </g>
      ))}
      {x.ticks.map(({ at, text }) => (
        <g key={at}>
          <line className="ws-grid" x1={across(at)} x2={across(at)} y1={TOP} y2={HEIGHT - BOTTOM} />
          <text className="ws-tick" x={across(at)} y={HEIGHT - BOTTOM + 17} textAnchor="middle">
            {text}
          </text>
        </g>
      ))}
      <text className="ws-tick" x={(LEFT + WIDTH - RIGHT) / 2} y={HEIGHT - 8} textAnchor="middle">
        {x.label}
      </text>
      <text
        className="ws-tick"
        transform={`translate(13 ${(TOP + HEIGHT - BOTTOM) / 2}) rotate(-90)`}
        textAnchor="middle"
      >
        {y.label}
      </text>
      {curves.map((curve) => (
        <polyline
          key={curve.label}
          className="ws-curve"
          data-weight={curve.weight}
          points={curve.points.map(place).join(' ')}
        />
      ))}
      {curves.map((curve) => {
        const [px, py] = labelPoint(curve.points);
        return (
          <text key={curve.label} className="ws-curve-label" x={across(px) + 6} y={up(py) - 6}>
            {curve.label}
          </text>
        );
      })}
      {marks.map((mark) => {
        const isNearTheRight = across(mark.at[0]) > WIDTH - 120;
        return (
          <g key={mark.label}>
            <circle className="ws-mark" cx={across(mark.at[0])} cy={up(mark.at[1])} r={6} />
            <text
              className="ws-mark-label"
              x={across(mark.at[0]) + (isNearTheRight ? -10 : 10)}
              y={up(mark.at[1]) + 18}
              textAnchor={isNearTheRight ? 'end' : 'start'}
            >
              {mark.label}
            </text>
          </g>
        );
      })}
    </svg>
  );
}

/** Where a curve is named: at its start, where the curves of one chart lie apart. */
function labelPoint(points: readonly ChartPoint[]): ChartPoint {
  return points[0] ?? [0, 0];
}

/** At the numbers of the axis, as far as the main curve goes. */
function Table({ drawn: { title, x, y, curves, marks } }: { readonly drawn: DrawnChart }) {
  return (
    <table>
      <caption>{title}</caption>
      <thead>
        <tr>
          <th scope="col">{x.label}</th>
          {curves.map(({ label }) => (
            <th key={label} scope="col">
              {label}: {y.label}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {x.ticks.map((tick) => (
          <tr key={tick.at}>
            <th scope="row">{tick.text}</th>
            {curves.map((curve) => (
              <td key={curve.label}>{readOff(curve.points, tick.at, y)}</td>
            ))}
          </tr>
        ))}
        {marks.map((mark) => (
          <tr key={mark.label}>
            <th scope="row">
              {mark.label}: {mark.at[0].toFixed(1)}
            </th>
            <td>{mark.at[1].toFixed(decimalsOf(y))}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** Between the two points beside it. */
function readOff(points: readonly ChartPoint[], at: number, y: DrawnAxis): string {
  const after = points.findIndex(([px]) => px >= at);
  const [right, left] = [points[after], points[Math.max(0, after - 1)]];
  if (right === undefined || left === undefined || left[0] > at) return 'no figure';
  const share = right[0] === left[0] ? 0 : (at - left[0]) / (right[0] - left[0]);
  return (left[1] + share * (right[1] - left[1])).toFixed(decimalsOf(y));
}

function decimalsOf({ from, to }: DrawnAxis): number {
  return to - from > 20 ? 0 : to - from > 2 ? 1 : 2;
}
