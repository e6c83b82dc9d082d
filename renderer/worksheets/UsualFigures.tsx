/** What is usual, row by row with its source; in the units of the reader. */
import type { UnitSystem } from '../../domain/quantity/preferredUnit.ts';
import { Panel } from '../kit/Panel.tsx';
import { useUnitSystem } from '../operations/AppStatus.tsx';
import { showNumber } from './core/measure.ts';
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
  const [low, high] = [least, most].map((end) => (end === null ? null : showNumber(measure, end, unitSystem)));
  const unit = low?.unit ?? high?.unit ?? '';
  const numbers =
    low == null
      ? `up to ${high?.text}`
      : high == null
        ? `from ${low.text}`
        : low.text === high.text
          ? low.text
          : `${low.text}–${high.text}`;
  return unit === '' ? numbers : `${numbers} ${unit}`;
}
