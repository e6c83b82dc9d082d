/** "Not possible, because …": a reason in place of an answer. Missing is not zero, and not yes either. */
import type { StepItem } from '../../../domain/procedure/modelSheet.ts';
import type { ItemAddress } from '../../../domain/procedure/progressTypes.ts';
import type { SaveOutcome } from '../field/useField.ts';
import { newestAnswer } from '../stage/answerText.ts';
import { useRun } from '../state/RunContext.ts';
import { saveErrorWords } from '../words/saveErrorWords.ts';
import { ReasonBox } from './ReasonBox.tsx';

/** Common practice. */
const READY_WORDS = ['Not fitted here', 'No access', 'No instrument for it here', 'Not testable today'];

export function NotPossible({
  item,
  address,
  onCancel,
}: {
  readonly item: StepItem;
  readonly address: ItemAddress;
  readonly onCancel: () => void;
}) {
  const { view, write, measuredById } = useRun();
  const given = newestAnswer(view.record, item.key);
  const save = async (reason: string): Promise<SaveOutcome> => {
    const ref = { visitId: view.visitId, runId: view.runId, stepKey: address.stepKey, itemKey: item.key };
    const reply =
      item.kind === 'read'
        ? await write('visits.recordReading', {
            ...ref,
            quantity: item.quantity,
            sample: 1,
            typedText: '',
            typedUnit: '',
            notMeasuredReason: reason.trim(),
            instrumentId: null,
            measuredById,
          })
        : await write('visits.answer', { ...ref, value: null, reason });
    return reply.ok ? { ok: true } : { ok: false, why: saveErrorWords(reply.error) };
  };
  return (
    <ReasonBox
      address={{ stepKey: address.stepKey, itemKey: item.key }}
      box="not-possible"
      label={item.kind === 'read' ? 'Not measured, because' : 'Not possible, because'}
      stored={given?.value === null ? (given.reason ?? '') : ''}
      readyWords={READY_WORDS}
      save={save}
      isFocused
      onCancel={onCancel}
    />
  );
}
