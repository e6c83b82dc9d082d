/** One quantity of a sample that was not measured, with why; the others of the row stand. */
import type { ItemAddress } from '../../../domain/procedure/progressTypes.ts';
import { quantitySpec } from '../../../domain/quantity/quantities.ts';
import { useRun } from '../state/RunContext.ts';
import { saveErrorWords } from '../words/saveErrorWords.ts';
import { ReasonBox } from './ReasonBox.tsx';
import type { SeriesBox } from './seriesPlan.ts';

const READY_WORDS = ['Analyser does not show it', 'Sensor failed', 'No test port'];

export function SeriesLeftOut({
  address,
  box,
  onDone,
}: {
  readonly address: ItemAddress;
  readonly box: SeriesBox;
  readonly onDone: () => void;
}) {
  const { view, write, measuredById } = useRun();
  return (
    <ReasonBox
      key={`${box.sample} ${box.quantity}`}
      address={address}
      box={`not-measured ${box.quantity} ${box.sample}`}
      label={`${quantitySpec(box.quantity).label}, sample ${box.sample}: not measured, because`}
      stored=""
      readyWords={READY_WORDS}
      isFocused
      onCancel={onDone}
      save={async (reason) => {
        const reply = await write('visits.recordReading', {
          visitId: view.visitId,
          runId: view.runId,
          ...address,
          quantity: box.quantity,
          sample: box.sample,
          typedText: '',
          typedUnit: '',
          notMeasuredReason: reason.trim(),
          instrumentId: null,
          measuredById,
        });
        if (reply.ok) onDone();
        return reply.ok ? { ok: true } : { ok: false, why: saveErrorWords(reply.error) };
      }}
    />
  );
}
