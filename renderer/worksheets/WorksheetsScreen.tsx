/** The computations of the trade, to be used without a visit: a list to pick from. */
import { Panel } from '../kit/Panel.tsx';
import { Screen } from '../kit/Screen.tsx';
import { RouteLink } from '../RouteLink.tsx';
import { readKept } from './core/keptInputs.ts';
import { WORKSHEET_GROUPS, WORKSHEETS } from './worksheets.ts';
import './worksheets.css';

export function WorksheetsScreen() {
  return (
    <Screen title="Worksheets">
      <p className="lo-faint" style={{ margin: 0 }}>
        Nothing typed here goes on file, unless you put it into a visit.
      </p>
      {WORKSHEET_GROUPS.map((group) => (
        <Panel key={group} title={group}>
          <ul className="ws-list">
            {WORKSHEETS.filter((worksheet) => worksheet.group === group).map(({ key, title, answers }) => (
              <li key={key}>
                <RouteLink to="worksheet" params={{ worksheetKey: key }}>
                  {title}
                </RouteLink>
                <div className="lo-faint">
                  {answers}
                  {readKept(sessionStorage, key) === null ? null : <b> Begun.</b>}
                </div>
              </li>
            ))}
          </ul>
        </Panel>
      ))}
    </Screen>
  );
}
