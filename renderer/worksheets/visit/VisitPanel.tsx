/** Between a worksheet and a visit under way: its readings taken over, and what was typed here put where the run asks for it. */
import { Button, Group, NativeSelect } from '@mantine/core';
import { useEffect, useMemo, useRef, useState } from 'react';
import type { RunView } from '../../../electron/contract/runs.ts';
import { Panel } from '../../kit/Panel.tsx';
import { useAppStatus, useUnitSystem } from '../../operations/AppStatus.tsx';
import { useOperation } from '../../operations/useOperation.ts';
import { analyseRun, judgeView } from '../../run/analyseRun.ts';
import { useInstruments } from '../../run/instruments/useInstruments.ts';
import type { Worksheet } from '../core/worksheet.ts';
import type { WorksheetInputs } from '../useWorksheetInputs.ts';
import type { FromRun } from '../WorksheetScreen.tsx';
import { fillFromRun } from './fillFromRun.ts';
import { InstrumentChoices } from './InstrumentChoices.tsx';
import { PlaceRow } from './PlaceRow.tsx';
import { placesInRun } from './placesInRun.ts';
import { useOpenRuns } from './useOpenRuns.ts';

type Props = {
  readonly worksheet: Worksheet;
  readonly inputs: WorksheetInputs;
  readonly from: FromRun | null;
};

export function VisitPanel({ worksheet, inputs, from }: Props) {
  const runs = useOpenRuns();
  const [chosenId, choose] = useState<string | null>(from?.runId ?? null);
  const chosen = runs.find(({ runId }) => runId === chosenId) ?? runs[0];
  const asked = useOperation(
    'visits.getRun',
    { visitId: chosen?.visitId ?? '', runId: chosen?.runId ?? '' },
    { isWanted: chosen !== undefined },
  );
  if (chosen === undefined || asked.state !== 'ready') return null;
  return (
    <OneVisit
      key={chosen.runId}
      worksheet={worksheet}
      inputs={inputs}
      view={asked.value}
      isOpenedFrom={from?.runId === chosen.runId}
      visit={
        runs.length === 1 ? (
          <p style={{ margin: 0 }}>{chosen.words}</p>
        ) : (
          <NativeSelect
            label="Visit"
            value={chosen.runId}
            data={runs.map(({ runId, words }) => ({ value: runId, label: words }))}
            onChange={(event) => choose(event.currentTarget.value)}
          />
        )
      }
    />
  );
}

function OneVisit({
  worksheet,
  inputs,
  view,
  isOpenedFrom,
  visit,
}: Omit<Props, 'from'> & {
  readonly view: RunView;
  readonly isOpenedFrom: boolean;
  readonly visit: React.ReactNode;
}) {
  const { today } = useAppStatus();
  const unitSystem = useUnitSystem();
  const instruments = useInstruments(view, today);
  const [put, setPut] = useState<readonly string[]>([]);
  const analysis = useMemo(
    () => analyseRun(view, judgeView(view), { now: new Date().toISOString(), firingReleasedAt: null }),
    [view],
  );
  const { places, asked } = placesInRun(worksheet, inputs.typed, unitSystem, { record: view.record, analysis });
  const onFile = fillFromRun(worksheet, view.record);
  const hasOnFile = Object.keys(onFile).length > 0;

  // Opened from a run, an untouched worksheet begins with the run's readings.
  const latest = useRef({ onFile, inputs });
  useEffect(() => {
    latest.current = { onFile, inputs };
  });
  useEffect(() => {
    const { onFile: readings, inputs: now } = latest.current;
    if (isOpenedFrom && Object.keys(now.typed).length === 0) now.fill(readings);
  }, [isOpenedFrom]);

  if (!asked && !hasOnFile) return null;
  return (
    <Panel title={asked ? 'Use in this visit' : 'From this visit'}>
      {visit}
      {hasOnFile ? (
        <Group mt="xs">
          <Button variant="default" onClick={() => inputs.fill(onFile)}>
            Take over what the visit has
          </Button>
        </Group>
      ) : null}
      {places.length > 0 ? (
        <>
          <InstrumentChoices quantities={places.map(({ quantity }) => quantity)} instruments={instruments} />
          <table className="ws-places" aria-label="Readings the visit asks for">
            <tbody>
              {places.map((place) => (
                <PlaceRow
                  key={place.key}
                  place={place}
                  view={view}
                  instruments={instruments}
                  onPut={(words) => setPut((before) => [...before, words])}
                />
              ))}
            </tbody>
          </table>
        </>
      ) : asked ? (
        <p className="lo-faint" style={{ margin: '0.5rem 0 0' }}>
          What is typed here and asked for in a step that is open now can be put there.
        </p>
      ) : null}
      <div role="status">
        {put.map((words) => (
          <p key={words} style={{ margin: '0.3rem 0 0', color: 'var(--lo-fir)' }}>
            {words}
          </p>
        ))}
      </div>
    </Panel>
  );
}
