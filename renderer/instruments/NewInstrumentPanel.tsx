/** A new instrument with its data sheet. */
import { DraftFormFrame } from '../form/DraftFormFrame.tsx';
import { useDraftForm } from '../form/useDraftForm.ts';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Panel } from '../kit/Panel.tsx';
import { InstrumentFieldset } from './InstrumentFieldset.tsx';
import { type InstrumentForm, instrumentFromForm, NO_INSTRUMENT } from './instrumentForm.ts';

export function NewInstrumentPanel({ onDone }: { readonly onDone: () => void }) {
  const form = useDraftForm<InstrumentForm, 'instruments.create'>({
    draftKey: 'new-instrument',
    operation: 'instruments.create',
    initial: NO_INSTRUMENT,
    toInput: instrumentFromForm,
    onDone,
  });
  return (
    <Panel title="New instrument">
      <DraftFormFrame
        form={form}
        submitLabel="Add instrument"
        failure={<ErrorText error={form.error} />}
        onLeave={onDone}
      >
        <InstrumentFieldset form={form} />
      </DraftFormFrame>
    </Panel>
  );
}
