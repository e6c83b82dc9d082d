/** The burner's modulation line, fan speed against power, with where the combustion readings sit: picture and table. */
import { useRun } from '../state/RunContext.ts';
import { type ModulationPoint, modulationPoints } from './modulationPoints.ts';

const WIDTH = 260;
const HEIGHT = 150;
const LEFT = 44;
const BOTTOM = 28;
const TOP = 10;
const RIGHT = 8;

export function ModulationLine() {
  const { view } = useRun();
  const points = modulationPoints(view.record, view.sheet);
  if (points.length < 2) return null;
  return (
    <section className="run-side-part" aria-label="Modulation line">
      <h2>Modulation line</h2>
      <figure className="run-chart">
        <figcaption>Fan speed against power, as shown. Line: tuning run; marks: combustion readings.</figcaption>
        <Picture points={points} />
        <table className="run-unseen">
          <caption>Fan speed and power</caption>
          <tbody>
            {points.map((point) => (
              <tr key={point.key}>
                <th scope="row">
                  {point.label}, {point.from}
                </th>
                <td>{point.powerPct} %</td>
                <td>{point.fanRpm} rpm</td>
              </tr>
            ))}
          </tbody>
        </table>
      </figure>
    </section>
  );
}

function Picture({ points }: { readonly points: readonly ModulationPoint[] }) {
  const top = Math.max(...points.map(({ fanRpm }) => fanRpm)) * 1.1 || 1;
  const x = (powerPct: number) => LEFT + (powerPct / 110) * (WIDTH - LEFT - RIGHT);
  const y = (fanRpm: number) => HEIGHT - BOTTOM - (fanRpm / top) * (HEIGHT - TOP - BOTTOM);
  const line = points.filter(({ from }) => from === 'tuning');
  return (
    <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} width="100%" aria-hidden="true" focusable="false">
      {[0, 0.5, 1].map((share) => (
        <g key={share}>
          <line className="run-chart-line" x1={LEFT} x2={WIDTH - RIGHT} y1={y(share * top)} y2={y(share * top)} />
          <text className="run-chart-text" x={LEFT - 4} y={y(share * top) + 4} textAnchor="end">
            {Math.round(share * top)}
          </text>
        </g>
      ))}
      {[0, 50, 100].map((powerPct) => (
        <text key={powerPct} className="run-chart-text" x={x(powerPct)} y={HEIGHT - 10} textAnchor="middle">
          {powerPct} %
        </text>
      ))}
      {line.length > 1 ? (
        <polyline
          className="run-chart-trace"
          points={line.map(({ powerPct, fanRpm }) => `${x(powerPct)},${y(fanRpm)}`).join(' ')}
        />
      ) : null}
      {points.map((point) => (
        <circle
          key={point.key}
          className={point.from === 'tuning' ? 'run-chart-earlier' : 'run-chart-dot'}
          cx={x(point.powerPct)}
          cy={y(point.fanRpm)}
          r={point.from === 'tuning' ? 3 : 5}
        />
      ))}
    </svg>
  );
}
