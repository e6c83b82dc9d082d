/** One number and the place in the run that asks for it. What is kept there is replaced only after a second press. */
import { Button } from '@mantine/core';
import { useState } from 'react';
import { instrumentKindFor } from '../../../domain/judgement/proof/instrumentKindFor.ts';
import type { RunView } from '../../../electron/contract/runs.ts';
import { useSignedIn } from '../../operations/AppStatus.tsx';
import { useAct } from '../../operations/useAct.ts';
import { instrumentChoices, mustNameInstrument } from '../../run/instruments/instrumentChoices.ts';
import type { Instruments } from '../../run/instruments/useInstruments.ts';
import { pointWords } from '../../run/words/pointWords.ts';
import { saveErrorWords } from '../../run/words/saveErrorWords.ts';
import type { Place } from './placesInRun.ts';

export function PlaceRow({
  place,
  view,
  instruments,
  onPut,
}: {
  readonly place: Place;
  readonly view: RunView;
  readonly instruments: Instruments;
  readonly onPut: (words: string) => void;
}) {
  const { staffId } = useSignedIn();
  const openStep = useAct('visits.openStep');
  const record = useAct('visits.recordReading');
  const [isAsking, setIsAsking] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  const { label, text, unit, words, step, item, quantity, sample, standing } = place;
  const point = pointWords(place.point, view.sheet);
  const where = [item.label, item.kind === 'series' ? `sample ${sample}` : point].filter(Boolean).join(', ');
  const act = standing === null ? 'Put there' : isAsking ? 'Replace it' : 'Replace …';

  const write = async () => {
    const inHand = instruments.inHand(instrumentKindFor(quantity));
    if (
      inHand.state === 'unknown' &&
      mustNameInstrument(quantity) &&
      instrumentChoices(quantity, instruments.list).length > 0
    ) {
      setProblem('Say first which instrument it was read with.');
      return;
    }
    const ref = { visitId: view.visitId, runId: view.runId, stepKey: step.key };
    if (!view.openedSteps.includes(step.key)) {
      const opened = await openStep.act(ref);
      if (!opened.ok) {
        setProblem(saveErrorWords(opened.error));
        return;
      }
    }
    const reply = await record.act({
      ...ref,
      itemKey: item.key,
      quantity,
      sample,
      typedText: text,
      typedUnit: unit,
      notMeasuredReason: null,
      instrumentId: inHand.state === 'chosen' ? inHand.instrumentId : null,
      measuredById: staffId,
    });
    if (reply.ok) onPut(`${label} ${words} is kept: ${where}.`);
    setProblem(reply.ok ? null : saveErrorWords(reply.error));
    setIsAsking(false);
  };

  return (
    <tr>
      <th scope="row">
        {label} <b>{words}</b>
      </th>
      <td>
        {where}
        <div className="lo-faint">{step.title}</div>
        {isAsking && standing !== null ? (
          <div role="alert">
            {standing.typedText} {standing.typedUnit} is kept there. It stays on file as the earlier reading.
          </div>
        ) : null}
        {problem === null ? null : (
          <div role="alert" style={{ color: 'var(--lo-ember)', fontWeight: 600 }}>
            {problem}
          </div>
        )}
      </td>
      <td>
        <Button
          variant="default"
          loading={openStep.isBusy || record.isBusy}
          aria-label={`${act}: ${label} ${words}, ${where}`}
          onClick={() => {
            if (standing !== null && !isAsking) setIsAsking(true);
            else void write();
          }}
        >
          {act}
        </Button>
      </td>
    </tr>
  );
}
