/** A new instrument with its data sheet; a technician adds the paper it is from. */
import { DraftFormFrame } from '../form/DraftFormFrame.tsx';
import { FilesField, type StoredFile } from '../form/FilesField.tsx';
import { useDraftForm } from '../form/useDraftForm.ts';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Panel } from '../kit/Panel.tsx';
import { useHasRole } from '../operations/AppStatus.tsx';
import { InstrumentFieldset } from './InstrumentFieldset.tsx';
import { type InstrumentForm, instrumentFromForm, NO_INSTRUMENT } from './instrumentForm.ts';

type NewInstrumentForm = InstrumentForm & { readonly papers: readonly StoredFile[] };

export function NewInstrumentPanel({ onDone }: { readonly onDone: () => void }) {
  const isOffice = useHasRole('owner', 'dispatcher');
  const form = useDraftForm<NewInstrumentForm, 'instruments.create'>({
    draftKey: 'new-instrument',
    operation: 'instruments.create',
    initial: { ...NO_INSTRUMENT, papers: [] },
    toInput: (values, reader) => ({
      ...instrumentFromForm(values, reader),
      paperIds: values.papers.map(({ attachmentId }) => attachmentId),
    }),
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
        <FilesField form={form} name="papers" label="Data sheet" takes="papers" isNeeded={!isOffice} />
      </DraftFormFrame>
    </Panel>
  );
}
