/** A registration marked as handed in or confirmed by mistake, or with a wrong day or number: put right, or taken back. */
import { Button, Group, Stack } from '@mantine/core';
import { useState } from 'react';
import type { OutputOf } from '../../electron/contract/index.ts';
import { DayField } from '../form/DayField.tsx';
import { DraftFormFrame } from '../form/DraftFormFrame.tsx';
import type { FormReader } from '../form/FormReader.ts';
import { TextField } from '../form/TextField.tsx';
import { useDraftForm } from '../form/useDraftForm.ts';
import { AskReason } from '../kit/AskReason.tsx';
import { dayWords } from '../kit/dayWords.ts';
import { ErrorText } from '../kit/ErrorText.tsx';
import { useHasRole } from '../operations/AppStatus.tsx';
import { useAct } from '../operations/useAct.ts';

type Registration = OutputOf<'registrations.get'>;

export function CorrectPanel({ registration }: { readonly registration: Registration }) {
  const takeBack = useAct('registrations.takeBack');
  const mayCorrect = useHasRole('owner', 'dispatcher');
  const [isCorrecting, setIsCorrecting] = useState(false);
  const { applianceId, confirmedOn } = registration;
  if (!mayCorrect) return null;
  const step = confirmedOn === null ? 'submitted' : 'confirmed';
  return (
    <Stack gap="sm" align="start">
      <ErrorText error={takeBack.error} />
      {isCorrecting ? (
        <CorrectForm registration={registration} onDone={() => setIsCorrecting(false)} />
      ) : (
        <Group gap="sm">
          <Button variant="default" onClick={() => setIsCorrecting(true)}>
            Put a day or number right
          </Button>
          <AskReason
            label={step === 'confirmed' ? 'It was not confirmed …' : 'It was not submitted …'}
            confirmLabel="Take it back"
            isBusy={takeBack.isBusy}
            onConfirm={async (why) => (await takeBack.act({ applianceId, step, why })).ok}
          >
            {step === 'confirmed'
              ? 'It waits for the maker again; number and proof go from here.'
              : 'It is to be submitted again, and its last day counts.'}{' '}
            What stood here stays in the changes.
          </AskReason>
        </Group>
      )}
    </Stack>
  );
}

function neededLine(reader: FormReader, typed: string): string {
  const number = reader.optional(typed);
  if (number === null) reader.fail('number', 'Needed.');
  return number ?? '';
}

function CorrectForm({
  registration: { applianceId, submittedOn, confirmedOn, number, note },
  onDone,
}: {
  readonly registration: Registration;
  readonly onDone: () => void;
}) {
  const form = useDraftForm({
    draftKey: `correct-registration.${applianceId}`,
    operation: 'registrations.correct',
    initial: {
      submittedOn: submittedOn === null ? '' : dayWords(submittedOn),
      note: note ?? '',
      confirmedOn: confirmedOn === null ? '' : dayWords(confirmedOn),
      number: number ?? '',
      why: '',
    },
    toInput: (values, reader) => ({
      applianceId,
      submittedOn: reader.neededDay('submittedOn', values.submittedOn),
      note: reader.optional(values.note),
      confirmation:
        confirmedOn === null
          ? null
          : {
              confirmedOn: reader.neededDay('confirmedOn', values.confirmedOn),
              number: neededLine(reader, values.number),
            },
      why: values.why,
    }),
    onDone,
  });
  return (
    <DraftFormFrame form={form} submitLabel="Put it right" failure={<ErrorText error={form.error} />}>
      <div className="lo-fields">
        <DayField form={form} name="submittedOn" label="Submitted on" isNeeded />
        <TextField form={form} name="note" label="How" />
        {confirmedOn === null ? null : (
          <>
            <DayField form={form} name="confirmedOn" label="Confirmed on" isNeeded />
            <TextField form={form} name="number" label="Maker’s number" isNeeded />
          </>
        )}
        <TextField form={form} name="why" label="What was wrong" isNeeded />
      </div>
      <Button variant="default" onClick={onDone}>
        Leave it as it is
      </Button>
    </DraftFormFrame>
  );
}
