/** One number over the years, with the sheet's limits and where it began anew. A picture for the eye: the table says the same. */
import type { SheetLimit } from '../../domain/procedure/modelSheet.ts';
import type { TrendSeries } from '../../domain/trend/trendSeries.ts';
import { useUnitSystem } from '../operations/AppStatus.tsx';
import { trendScale } from './trendScale.ts';

const WIDTH = 420;
const HEIGHT = 170;
const LEFT = 46;
const RIGHT = 10;
const TOP = 10;
const BOTTOM = 24;

export function TrendChart({
  series,
  limits,
}: {
  readonly series: TrendSeries;
  readonly limits: readonly SheetLimit[];
}) {
  const scale = trendScale(series, limits, useUnitSystem());
  if (scale === null) return null;
  const { low, high, ticks, min, max, shareOf, years } = scale;
  const x = (on: string) => LEFT + shareOf(on) * (WIDTH - LEFT - RIGHT);
  const y = (value: number) => TOP + ((high - value) / (high - low)) * (HEIGHT - TOP - BOTTOM);
  return (
    <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} width="100%" aria-hidden="true" focusable="false">
      {min === null && max === null ? null : (
        <rect
          className="trend-band"
          x={LEFT}
          width={WIDTH - LEFT - RIGHT}
          y={y(max ?? high)}
          height={Math.max(1, y(min ?? low) - y(max ?? high))}
        />
      )}
      {ticks.map(({ at, text }) => (
        <g key={at}>
          <line className="trend-line" x1={LEFT} x2={WIDTH - RIGHT} y1={y(at)} y2={y(at)} />
          <text className="trend-text" x={LEFT - 5} y={y(at) + 4} textAnchor="end">
            {text}
          </text>
        </g>
      ))}
      {years.map(({ share, text }) => (
        <text
          key={text}
          className="trend-text"
          x={LEFT + share * (WIDTH - LEFT - RIGHT)}
          y={HEIGHT - 7}
          textAnchor="middle"
        >
          {text}
        </text>
      ))}
      {series.points.map((point, index) =>
        point.startsBaseline && index > 0 ? (
          <line
            key={`new ${point.runId}`}
            className="trend-baseline"
            x1={x(point.on)}
            x2={x(point.on)}
            y1={TOP}
            y2={HEIGHT - BOTTOM}
          />
        ) : null,
      )}
      {stretches(series).map((stretch) => (
        <polyline
          key={stretch[0]?.runId}
          className="trend-trace"
          points={stretch.map((point) => `${x(point.on)},${y(point.value)}`).join(' ')}
        />
      ))}
      {series.points.map((point) => (
        <g key={point.runId}>
          {point.foundValue === null ? null : (
            <circle className="trend-found" cx={x(point.on)} cy={y(point.foundValue)} r={5} />
          )}
          {point.comparator === '=' ? (
            <circle className="trend-dot" cx={x(point.on)} cy={y(point.value)} r={4} />
          ) : (
            // Over range is no measurement: an arrow, not a point.
            <text className="trend-over" x={x(point.on)} y={y(point.value) + 5} textAnchor="middle">
              {point.comparator === '>' ? '▲' : '▼'}
            </text>
          )}
        </g>
      ))}
    </svg>
  );
}

/** Joined as far as one says something about the next: not over a new baseline, nor through an over-range display. */
function stretches({ points }: TrendSeries): readonly TrendSeries['points'][] {
  const all: TrendSeries['points'][number][][] = [[]];
  for (const point of points) {
    if (point.startsBaseline || point.comparator !== '=') all.push([]);
    if (point.comparator === '=') all.at(-1)?.push(point);
  }
  return all.filter((stretch) => stretch.length > 1);
}
