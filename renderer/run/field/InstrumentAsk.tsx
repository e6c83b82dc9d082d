/** Asked once for each kind of reading: a number that nobody knows the instrument of proves nothing. */
import type { RecordedInstrument } from '../../../domain/procedure/runRecord.ts';
import { KeyHint } from '../../kit/KeyHint.tsx';
import { useAppStatus } from '../../operations/AppStatus.tsx';
import { isOutOfDate } from '../instruments/instrumentChoices.ts';

export function InstrumentAsk({
  choices,
  onChoose,
}: {
  readonly choices: readonly RecordedInstrument[];
  readonly onChoose: (instrumentId: string) => void;
}) {
  const { today } = useAppStatus();
  return (
    <div className="run-ask" role="alert">
      <b>Read with which instrument?</b>
      <div className="run-ready-words">
        {choices.map((one, index) => (
          <button
            key={one.instrumentId}
            type="button"
            className="run-button"
            onClick={() => onChoose(one.instrumentId)}
          >
            <KeyHint keys={`Alt+${index + 1}`} /> {one.label} ({one.serial})
            {isOutOfDate(one, today) ? ', out of date' : ''}
          </button>
        ))}
      </div>
    </div>
  );
}
