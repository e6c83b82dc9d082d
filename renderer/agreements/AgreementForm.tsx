/** Writing an agreement about one appliance, and putting right one that was written wrong: the same fields. */
import { Button } from '@mantine/core';
import { LONGEST_INTERVAL_MONTHS } from '../../electron/contract/agreements.ts';
import type { InputOf, OutputOf } from '../../electron/contract/index.ts';
import { DayField } from '../form/DayField.tsx';
import { DraftFormFrame } from '../form/DraftFormFrame.tsx';
import type { FormReader } from '../form/FormReader.ts';
import { SelectField } from '../form/SelectField.tsx';
import { TextField } from '../form/TextField.tsx';
import { type DraftForm, useDraftForm } from '../form/useDraftForm.ts';
import { dayWords } from '../kit/dayWords.ts';
import { EmptyState } from '../kit/EmptyState.tsx';
import { ErrorText } from '../kit/ErrorText.tsx';
import { useAppStatus } from '../operations/AppStatus.tsx';

type Found = OutputOf<'agreements.list'>;
type Parties = Found['parties'];

type Typed = {
  readonly partyId: string;
  readonly number: string;
  readonly everyMonths: string;
  readonly fromOn: string;
  readonly toOn: string;
};

export function WriteAgreement({
  applianceId,
  parties,
  onDone,
}: {
  readonly applianceId: string;
  readonly parties: Parties;
  readonly onDone: () => void;
}) {
  const { today } = useAppStatus();
  const form = useDraftForm({
    draftKey: `agreement.${applianceId}`,
    operation: 'agreements.write',
    inputRoot: 'agreement',
    initial: {
      partyId: parties[0]?.partyId ?? '',
      number: '',
      everyMonths: '12',
      fromOn: dayWords(today),
      toOn: '',
    },
    toInput: (values, reader) => ({ applianceId, agreement: agreementOf(values, reader) }),
    onDone,
  });
  if (parties.length === 0) {
    return (
      <EmptyState title="Nobody to agree with" action={<Button onClick={onDone}>Back</Button>}>
        No customer is on file where this appliance stands: give its site and customer first.
      </EmptyState>
    );
  }
  return (
    <DraftFormFrame form={form} submitLabel="Write it" failure={<ErrorText error={form.error} />} onLeave={onDone}>
      <Fields form={form} parties={parties} />
    </DraftFormFrame>
  );
}

export function CorrectAgreement({
  agreement,
  parties,
  onDone,
}: {
  readonly agreement: Found['agreements'][number];
  readonly parties: Parties;
  readonly onDone: () => void;
}) {
  const { agreementId, partyId, partyName, number, everyMonths, fromOn, toOn } = agreement;
  const form = useDraftForm({
    draftKey: `agreement-correct.${agreementId}`,
    operation: 'agreements.update',
    inputRoot: 'agreement',
    initial: {
      partyId,
      number: number ?? '',
      everyMonths: String(everyMonths),
      fromOn: dayWords(fromOn),
      toOn: toOn === null ? '' : dayWords(toOn),
    },
    toInput: (values, reader) => ({ agreementId, agreement: agreementOf(values, reader) }),
    onDone,
  });
  // Who it was made with stays to be chosen, also after they moved out.
  const isThere = parties.some((one) => one.partyId === partyId);
  return (
    <DraftFormFrame form={form} submitLabel="Correct it" failure={<ErrorText error={form.error} />} onLeave={onDone}>
      <Fields form={form} parties={isThere ? parties : [{ partyId, name: partyName }, ...parties]} />
    </DraftFormFrame>
  );
}

function Fields({ form, parties }: { readonly form: DraftForm<Typed>; readonly parties: Parties }) {
  return (
    <div className="lo-fields">
      <SelectField
        form={form}
        name="partyId"
        label="With"
        options={parties.map(({ partyId, name }) => ({ value: partyId, label: name }))}
      />
      <TextField form={form} name="everyMonths" label="Service every … months" isNeeded />
      <DayField form={form} name="fromOn" label="From" description="Services are counted from this day." isNeeded />
      <DayField form={form} name="toOn" label="Until" description="The last day. Empty: until somebody ends it." />
      <TextField form={form} name="number" label="Number" />
    </div>
  );
}

function agreementOf(values: Typed, reader: FormReader): InputOf<'agreements.write'>['agreement'] {
  const everyMonths = reader.whole('everyMonths', values.everyMonths);
  if (everyMonths === null) reader.fail('everyMonths', 'Needed.');
  else if (everyMonths < 1 || everyMonths > LONGEST_INTERVAL_MONTHS)
    reader.fail('everyMonths', `From 1 to ${LONGEST_INTERVAL_MONTHS} months.`);
  return {
    partyId: values.partyId,
    number: reader.optional(values.number),
    everyMonths: everyMonths ?? 1,
    fromOn: reader.neededDay('fromOn', values.fromOn),
    toOn: reader.day('toOn', values.toOn),
  };
}
