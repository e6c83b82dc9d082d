/** Makers' trainings of one person; some covers count only a startup by somebody trained on that line. */
import { Stack } from '@mantine/core';
import type { StaffMember, Training } from '../../electron/contract/people.ts';
import { DayField } from '../form/DayField.tsx';
import { DraftFormFrame } from '../form/DraftFormFrame.tsx';
import type { FormReader } from '../form/FormReader.ts';
import { TextField } from '../form/TextField.tsx';
import { type DraftForm, useDraftForm } from '../form/useDraftForm.ts';
import { dayWords } from '../kit/dayWords.ts';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Panel } from '../kit/Panel.tsx';
import { useAct } from '../operations/useAct.ts';
import { EndOrWithdraw } from './EndOrWithdraw.tsx';
import { PapersPanel } from './PapersPanel.tsx';

export function TrainingPanel({ person, mayEdit }: { readonly person: StaffMember; readonly mayEdit: boolean }) {
  const putBack = useAct('staff.putBackTraining');
  return (
    <PapersPanel
      title="Trainings"
      word="training"
      papers={person.trainings}
      withdrawn={person.withdrawn.trainings}
      idOf={({ trainingId }) => trainingId}
      nameOf={({ maker, modelLine }) => `${maker} ${modelLine}`}
      columns={[
        { label: 'Maker and line', cell: ({ maker, modelLine }) => `${maker} ${modelLine}` },
        { label: 'Number', cell: ({ number }) => number ?? '' },
      ]}
      empty="A maker’s course for a line of models, with its number and dates."
      mayEdit={mayEdit}
      onPutBack={(trainingId) => void putBack.act({ trainingId })}
      failure={<ErrorText error={putBack.error} />}
      newForm={(onDone) => <NewTrainingForm staffId={person.staffId} onDone={onDone} />}
      changeForm={(training, onDone) => (
        <TrainingChange key={training.trainingId} training={training} onDone={onDone} />
      )}
    />
  );
}

function NewTrainingForm({ staffId, onDone }: { readonly staffId: string; readonly onDone: () => void }) {
  const form = useDraftForm({
    draftKey: `training.${staffId}`,
    operation: 'staff.addTraining',
    inputRoot: 'training',
    initial: EMPTY,
    toInput: (values, reader) => ({ staffId, training: trainingFromForm(values, reader) }),
    onDone,
  });
  return (
    <DraftFormFrame form={form} submitLabel="Add" failure={<ErrorText error={form.error} />} onLeave={onDone}>
      <TrainingFieldset form={form} />
    </DraftFormFrame>
  );
}

function TrainingChange({ training, onDone }: { readonly training: Training; readonly onDone: () => void }) {
  const { trainingId } = training;
  const end = useAct('staff.endTraining');
  const withdraw = useAct('staff.withdrawTraining');
  const form = useDraftForm({
    draftKey: `training-change.${trainingId}`,
    operation: 'staff.correctTraining',
    inputRoot: 'training',
    initial: {
      maker: training.maker,
      modelLine: training.modelLine,
      number: training.number ?? '',
      validFrom: dayWords(training.validFrom),
      validTo: training.validTo === null ? '' : dayWords(training.validTo),
    },
    toInput: (values, reader) => ({ trainingId, training: trainingFromForm(values, reader) }),
    onDone,
  });
  const finish = ({ ok }: { readonly ok: boolean }) => {
    if (ok) onDone();
    return ok;
  };
  return (
    <Panel title={`Training ${training.maker} ${training.modelLine}`} level={3}>
      <Stack>
        <DraftFormFrame form={form} submitLabel="Save" failure={<ErrorText error={form.error} />} onLeave={onDone}>
          <TrainingFieldset form={form} />
        </DraftFormFrame>
        <EndOrWithdraw
          ending="After that day it counts for no startup on this line."
          isBusy={end.isBusy || withdraw.isBusy}
          onEnd={async (why, lastDay) => finish(await end.act({ trainingId, lastDay, why }))}
          onWithdraw={async (why) => finish(await withdraw.act({ trainingId, why }))}
        />
        <ErrorText error={end.error} />
        <ErrorText error={withdraw.error} />
      </Stack>
    </Panel>
  );
}

type TrainingForm = {
  readonly maker: string;
  readonly modelLine: string;
  readonly number: string;
  readonly validFrom: string;
  readonly validTo: string;
};

const EMPTY: TrainingForm = { maker: '', modelLine: '', number: '', validFrom: '', validTo: '' };

function trainingFromForm(values: TrainingForm, reader: FormReader): Omit<Training, 'trainingId' | 'endReason'> {
  return {
    maker: values.maker,
    modelLine: values.modelLine,
    number: reader.optional(values.number),
    validFrom: reader.neededDay('validFrom', values.validFrom),
    validTo: reader.day('validTo', values.validTo),
  };
}

function TrainingFieldset({ form }: { readonly form: DraftForm<TrainingForm> }) {
  return (
    <div className="lo-fields">
      <TextField form={form} name="maker" label="Maker" isNeeded />
      <TextField form={form} name="modelLine" label="Line of models" isNeeded />
      <TextField form={form} name="number" label="Number" />
      <DayField form={form} name="validFrom" label="Valid from" isNeeded />
      <DayField form={form} name="validTo" label="Last day" description="Empty: no end." />
    </div>
  );
}
