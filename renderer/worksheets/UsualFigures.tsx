/** What is usual, row by row with its source; in the units of the reader. */
import type { UnitSystem } from '../../domain/quantity/preferredUnit.ts';
import { Panel } from '../kit/Panel.tsx';
import { useUnitSystem } from '../operations/AppStatus.tsx';
import { type ShownNumber, showNumber } from './core/measure.ts';
import type { UsualFigure, UsualTable } from './core/usual.ts';

export function UsualFigures({ tables }: { readonly tables: readonly UsualTable[] }) {
  const unitSystem = useUnitSystem();
  return (
    <Panel title="Usual figures">
      <p className="ws-usual-lead">
        What is usual, and where it is from. The maker’s sheet and the local code come first.
      </p>
      {tables.map(({ title, columns, rows }) => (
        <table key={title} className="ws-usual">
          <caption>{title}</caption>
          <thead>
            <tr>
              <td />
              {columns.map((column) => (
                <th key={column} scope="col" className="ws-usual-column">
                  {column}
                </th>
              ))}
              <th scope="col" className="ws-usual-column">
                Notes and source
              </th>
            </tr>
          </thead>
          <tbody>
            {rows.map(({ label, figures, notes }) => (
              <tr key={label}>
                <th scope="row">{label}</th>
                {columns.map((column, index) => (
                  <td key={column} className="ws-usual-figure">
                    {figureText(figures[index] ?? null, unitSystem)}
                  </td>
                ))}
                <td className="lo-faint">{notes.join('; ')}</td>
              </tr>
            ))}
          </tbody>
        </table>
      ))}
    </Panel>
  );
}

export function figureText(figure: UsualFigure | null, unitSystem: UnitSystem): string {
  if (figure === null) return '';
  const { measure, least, most } = figure;
  const shown = (end: number) => showNumber(measure, end, unitSystem);
  if (least === null) return most === null ? '' : `up to ${withUnit(shown(most))}`;
  if (most === null) return `from ${withUnit(shown(least))}`;
  const [low, high] = [shown(least), shown(most)];
  return withUnit(low.text === high.text ? low : { ...high, text: `${low.text}–${high.text}` });
}

function withUnit({ text, unit }: ShownNumber): string {
  return unit === '' ? text : `${text} ${unit}`;
}
