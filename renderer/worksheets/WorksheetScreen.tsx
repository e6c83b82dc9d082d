/** One worksheet: inputs on the left, what follows from them beside it, with its formula, validity and source. */
import { Button } from '@mantine/core';
import { useMemo } from 'react';
import { Caution } from '../kit/Caution.tsx';
import { EmptyState } from '../kit/EmptyState.tsx';
import { Panel } from '../kit/Panel.tsx';
import { Screen } from '../kit/Screen.tsx';
import { useUnitSystem } from '../operations/AppStatus.tsx';
import { RouteLink } from '../RouteLink.tsx';
import { ChartPicture } from './chart/ChartPicture.tsx';
import { isAsked } from './core/evaluate.ts';
import type { Worksheet } from './core/worksheet.ts';
import { ResultTable } from './ResultTable.tsx';
import { UsualFigures } from './UsualFigures.tsx';
import { useWorksheetInputs } from './useWorksheetInputs.ts';
import { VisitPanel } from './visit/VisitPanel.tsx';
import { WorksheetField } from './WorksheetField.tsx';
import { findWorksheet } from './worksheets.ts';
import './worksheets.css';

export type FromRun = { readonly visitId: string; readonly runId: string };

export function WorksheetScreen({
  worksheetKey,
  from,
}: {
  readonly worksheetKey: string;
  /** The run it was opened from. */
  readonly from: FromRun | null;
}) {
  const worksheet = findWorksheet(worksheetKey);
  if (worksheet !== undefined) return <OneWorksheet worksheet={worksheet} from={from} />;
  return (
    <Screen title="Worksheet" crumbs={<BackToList />}>
      <EmptyState title="No such worksheet">It may have another name now: see the list.</EmptyState>
    </Screen>
  );
}

function OneWorksheet({ worksheet, from }: { readonly worksheet: Worksheet; readonly from: FromRun | null }) {
  const unitSystem = useUnitSystem();
  const inputs = useWorksheetInputs(worksheet.key);
  const { typed } = inputs;
  const { lines, problems, chart } = useMemo(
    () => worksheet.evaluate(typed, unitSystem),
    [worksheet, typed, unitSystem],
  );
  return (
    <Screen
      title={worksheet.title}
      crumbs={
        <>
          <BackToList />
          {from === null ? null : (
            <RouteLink to="run" params={from}>
              Back to the run
            </RouteLink>
          )}
        </>
      }
      action={
        <Button variant="default" disabled={Object.keys(typed).length === 0} onClick={inputs.clear}>
          Start afresh
        </Button>
      }
    >
      {worksheet.caution === undefined ? null : <Caution>{worksheet.caution}</Caution>}
      <div className="ws-body">
        <div className="ws-column">
          <Panel title="Inputs">
            <div className="ws-fields">
              {Object.entries(worksheet.fields)
                .filter(([, field]) => isAsked(field, worksheet.fields, typed, unitSystem))
                .map(([key, field]) => (
                  <WorksheetField
                    key={key}
                    field={field}
                    typed={typed[key]}
                    problem={problems[key] ?? null}
                    onType={(input) => inputs.type(key, input)}
                  />
                ))}
            </div>
          </Panel>
          <VisitPanel worksheet={worksheet} inputs={inputs} from={from} />
        </div>
        <div className="ws-column">
          <Panel title="Results">
            <ResultTable title={worksheet.title} lines={lines} />
          </Panel>
          {chart === null ? null : <ChartPicture chart={chart} />}
          {worksheet.usual === undefined ? null : <UsualFigures tables={worksheet.usual} />}
          <Panel title="How it is worked out">
            <About title="Formula" lines={worksheet.formula} className="ws-formula" />
            <About title="Holds for" lines={worksheet.valid} />
            <About title="Source" lines={worksheet.source} />
          </Panel>
        </div>
      </div>
    </Screen>
  );
}

function BackToList() {
  return (
    <RouteLink to="worksheets" params={{}}>
      Worksheets
    </RouteLink>
  );
}

function About({
  title,
  lines,
  className,
}: {
  readonly title: string;
  readonly lines: readonly string[];
  readonly className?: string;
}) {
  return (
    <>
      <h3 className="ws-about">{title}</h3>
      <ul className={`ws-plain-list ${className ?? ''}`}>
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </>
  );
}
