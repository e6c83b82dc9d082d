/** Taking an appliance out of use: the last day, why, and what came in its place. */
import type { OutputOf } from '../../electron/contract/index.ts';
import { DayField } from '../form/DayField.tsx';
import { DraftFormFrame } from '../form/DraftFormFrame.tsx';
import { SelectField } from '../form/SelectField.tsx';
import { TextField } from '../form/TextField.tsx';
import { useDraftForm } from '../form/useDraftForm.ts';
import { dayWords } from '../kit/dayWords.ts';
import { ErrorText } from '../kit/ErrorText.tsx';
import { useAppStatus } from '../operations/AppStatus.tsx';

export function TakeOutForm({
  applianceId,
  neighbours,
  onDone,
}: {
  readonly applianceId: string;
  readonly neighbours: OutputOf<'appliances.getPlaces'>['neighbours'];
  readonly onDone: () => void;
}) {
  const { today } = useAppStatus();
  const form = useDraftForm({
    draftKey: `take-out.${applianceId}`,
    operation: 'appliances.takeOut',
    initial: { on: dayWords(today), why: '', replacedById: '' },
    toInput: (values, reader) => ({
      applianceId,
      on: reader.neededDay('on', values.on),
      why: values.why,
      replacedById: reader.optional(values.replacedById),
    }),
    onDone,
  });
  return (
    <DraftFormFrame
      form={form}
      submitLabel="Take it out of use"
      failure={<ErrorText error={form.error} />}
      onLeave={onDone}
    >
      <p style={{ margin: 0 }}>
        After that day it falls due for no service and no registration, and no recall is about it. Its visits, readings
        and records stay, and it can be put back.
      </p>
      <div className="lo-fields">
        <DayField form={form} name="on" label="Last day in use" isNeeded />
        <TextField form={form} name="why" label="Why" placeholder="replaced, scrapped, sold" isNeeded autoFocus />
        <SelectField
          form={form}
          name="replacedById"
          label="What came in its place"
          description="The new one is filed at the site first; then it can be chosen here."
          emptyLabel="Nothing, or not on file"
          options={neighbours.map(({ applianceId: value, maker, model, serial }) => ({
            value,
            label: `${maker} ${model}, ${serial}`,
          }))}
        />
      </div>
    </DraftFormFrame>
  );
}
