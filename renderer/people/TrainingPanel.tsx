/** Makers' trainings of one person; some covers count only a startup by somebody trained on that line. */
import { Button, Stack } from '@mantine/core';
import { useState } from 'react';
import type { StaffMember } from '../../electron/contract/people.ts';
import { DayField } from '../form/DayField.tsx';
import { DraftFormFrame } from '../form/DraftFormFrame.tsx';
import { TextField } from '../form/TextField.tsx';
import { useDraftForm } from '../form/useDraftForm.ts';
import { EmptyState } from '../kit/EmptyState.tsx';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Panel } from '../kit/Panel.tsx';
import { PlainTable } from '../kit/PlainTable.tsx';
import { InDate } from './InDate.tsx';

export function TrainingPanel({ person, mayEdit }: { readonly person: StaffMember; readonly mayEdit: boolean }) {
  const [isAdding, setIsAdding] = useState(false);
  return (
    <Panel
      title="Trainings"
      action={
        mayEdit && !isAdding ? (
          <Button variant="default" onClick={() => setIsAdding(true)}>
            Add a training
          </Button>
        ) : undefined
      }
    >
      <Stack>
        {isAdding ? <TrainingForm staffId={person.staffId} onDone={() => setIsAdding(false)} /> : null}
        {person.trainings.length === 0 ? (
          <EmptyState title="No training on file">
            A maker’s course for a line of models, with its number and dates.
          </EmptyState>
        ) : (
          <PlainTable
            caption="Trainings"
            rows={person.trainings}
            keyOf={(training) => training.trainingId}
            columns={[
              { label: 'Maker and line', cell: ({ maker, modelLine }) => `${maker} ${modelLine}` },
              { label: 'Number', cell: ({ number }) => number ?? '' },
              { label: 'Dates', cell: ({ validFrom, validTo }) => <InDate from={validFrom} to={validTo} /> },
            ]}
          />
        )}
      </Stack>
    </Panel>
  );
}

function TrainingForm({ staffId, onDone }: { readonly staffId: string; readonly onDone: () => void }) {
  const form = useDraftForm({
    draftKey: `training.${staffId}`,
    operation: 'staff.addTraining',
    inputRoot: 'training',
    initial: { maker: '', modelLine: '', number: '', validFrom: '', validTo: '' },
    toInput: (values, reader) => ({
      staffId,
      training: {
        maker: values.maker,
        modelLine: values.modelLine,
        number: reader.optional(values.number),
        validFrom: reader.neededDay('validFrom', values.validFrom),
        validTo: reader.day('validTo', values.validTo),
      },
    }),
    onDone,
  });
  return (
    <DraftFormFrame form={form} submitLabel="Add" failure={<ErrorText error={form.error} />} onLeave={onDone}>
      <div className="lo-fields">
        <TextField form={form} name="maker" label="Maker" isNeeded />
        <TextField form={form} name="modelLine" label="Line of models" isNeeded />
        <TextField form={form} name="number" label="Number" />
        <DayField form={form} name="validFrom" label="Valid from" isNeeded />
        <DayField form={form} name="validTo" label="Last day" description="Empty: no end." />
      </div>
    </DraftFormFrame>
  );
}
