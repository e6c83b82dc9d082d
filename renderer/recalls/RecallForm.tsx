/** Taking a notice down, or changing it. */
import type { RecallRow } from '../../electron/contract/recalls.ts';
import { AmountField } from '../form/AmountField.tsx';
import { DayField } from '../form/DayField.tsx';
import { DraftFormFrame } from '../form/DraftFormFrame.tsx';
import { SelectField } from '../form/SelectField.tsx';
import { TextField } from '../form/TextField.tsx';
import { usualUnit } from '../form/typedAmount.ts';
import { useDraftForm } from '../form/useDraftForm.ts';
import { ErrorText } from '../kit/ErrorText.tsx';
import { useAppStatus, useUnitSystem } from '../operations/AppStatus.tsx';
import { useOperation } from '../operations/useOperation.ts';
import { recallFromForm, recallToForm } from './recallForm.ts';

const UNTIL_SETTLED = [
  { value: 'off', label: 'Nothing is lit' },
  { value: 'may-run', label: 'It may run: the notice informs, or asks for work at the next visit' },
];

export function RecallForm({
  recall,
  onDone,
}: {
  readonly recall: RecallRow | null;
  readonly onDone: (recallId: string) => void;
}) {
  const { today } = useAppStatus();
  const altitudeUnit = usualUnit('length', useUnitSystem());
  const overview = useOperation('deadlines.get', {});
  const makers = overview.state === 'ready' ? overview.value.makers.map(({ maker }) => maker) : [];
  const form = useDraftForm({
    draftKey: `recall.${recall?.recallId ?? 'new'}`,
    operation: 'recalls.save',
    inputRoot: 'recall',
    initial: recallToForm(recall, today, altitudeUnit),
    toInput: (values, reader) => ({ recallId: recall?.recallId ?? null, recall: recallFromForm(values, reader) }),
    onDone: ({ recallId }) => onDone(recallId),
  });
  return (
    <DraftFormFrame form={form} submitLabel="Save" failure={<ErrorText error={form.error} />}>
      <div className="lo-fields">
        <TextField form={form} name="title" label="What it is about" isNeeded autoFocus />
        <TextField form={form} name="number" label="Its number" />
        <TextField form={form} name="source" label="Who issued it" isNeeded placeholder="the maker, an authority …" />
        <DayField form={form} name="issuedOn" label="Issued on" isNeeded />
        <TextField form={form} name="maker" label="Maker" isNeeded suggestions={makers} />
      </div>
      <div className="lo-fields">
        <TextField
          form={form}
          name="models"
          label="Models"
          description="One a line; empty: every model of the maker."
          lines={3}
        />
        <TextField
          form={form}
          name="serialRanges"
          label="Serial numbers"
          description="One range a line: A1000 to A1999, both with it. Empty: every serial."
          lines={3}
        />
        <AmountField form={form} name="altitudeMinM" label="From this altitude up" dimension="length" />
        <AmountField form={form} name="altitudeMaxM" label="Up to this altitude" dimension="length" />
      </div>
      <TextField
        form={form}
        name="whatToDo"
        label="What it asks for"
        description="In the notice’s own words: they go into the letters."
        lines={4}
        isNeeded
      />
      <SelectField
        form={form}
        name="untilSettled"
        label="Until it is settled"
        description="It may run only where the notice itself says so."
        options={UNTIL_SETTLED}
      />
    </DraftFormFrame>
  );
}
