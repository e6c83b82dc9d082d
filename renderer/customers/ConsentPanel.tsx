/** What a customer agreed to hear about, by which channel, since when and how we know; a later "no" stands beside it. */
import { Button, Stack } from '@mantine/core';
import { useState } from 'react';
import { CHANNELS, PURPOSES } from '../../domain/vocabulary/people.ts';
import type { OutputOf } from '../../electron/contract/index.ts';
import { DayField } from '../form/DayField.tsx';
import { DraftFormFrame } from '../form/DraftFormFrame.tsx';
import { SelectField } from '../form/SelectField.tsx';
import { TextField } from '../form/TextField.tsx';
import { useDraftForm } from '../form/useDraftForm.ts';
import { DateText } from '../kit/DateText.tsx';
import { dayWords } from '../kit/dayWords.ts';
import { EmptyState } from '../kit/EmptyState.tsx';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Panel } from '../kit/Panel.tsx';
import { PlainTable } from '../kit/PlainTable.tsx';
import { useAppStatus } from '../operations/AppStatus.tsx';
import { CHANNEL_WORDS, PURPOSE_WORDS } from './consentWords.ts';

type Consents = OutputOf<'customers.get'>['consents'];

export function ConsentPanel({ partyId, consents }: { readonly partyId: string; readonly consents: Consents }) {
  const [isAdding, setIsAdding] = useState(false);
  return (
    <Panel
      title="Consent"
      action={
        isAdding ? undefined : (
          <Button variant="default" onClick={() => setIsAdding(true)}>
            Record consent
          </Button>
        )
      }
    >
      <Stack>
        {isAdding ? <ConsentForm partyId={partyId} onDone={() => setIsAdding(false)} /> : null}
        {consents.length === 0 ? (
          <EmptyState title="Nothing recorded">
            What they agreed to hear about and how. Without it only appointments they asked for and safety notices go
            out.
          </EmptyState>
        ) : (
          <PlainTable
            caption="Consent"
            rows={consents}
            keyOf={(consent) => `${consent.purpose} ${consent.channel} ${consent.on} ${consent.granted}`}
            columns={[
              { label: 'About', cell: ({ purpose }) => PURPOSE_WORDS[purpose] },
              { label: 'By', cell: ({ channel }) => CHANNEL_WORDS[channel] },
              { label: 'Answer', cell: ({ granted }) => (granted ? 'agreed' : 'does not want it') },
              { label: 'On', cell: ({ on }) => <DateText day={on} /> },
              { label: 'How we know', cell: ({ source }) => source },
            ]}
          />
        )}
      </Stack>
    </Panel>
  );
}

function ConsentForm({ partyId, onDone }: { readonly partyId: string; readonly onDone: () => void }) {
  const { today } = useAppStatus();
  const form = useDraftForm({
    draftKey: `consent.${partyId}`,
    operation: 'customers.recordConsent',
    initial: { purpose: 'service-due', channel: 'e-mail', answer: 'agreed', on: dayWords(today), source: '' },
    toInput: (values, reader) => ({
      partyId,
      purpose: PURPOSES.find((purpose) => purpose === values.purpose) ?? 'service-due',
      channel: CHANNELS.find((channel) => channel === values.channel) ?? 'e-mail',
      granted: values.answer === 'agreed',
      on: reader.neededDay('on', values.on),
      source: values.source,
    }),
    onDone,
  });
  return (
    <DraftFormFrame form={form} submitLabel="Record" failure={<ErrorText error={form.error} />} onLeave={onDone}>
      <div className="lo-fields">
        <SelectField
          form={form}
          name="purpose"
          label="About"
          options={PURPOSES.map((value) => ({ value, label: PURPOSE_WORDS[value] }))}
        />
        <SelectField
          form={form}
          name="channel"
          label="By"
          options={CHANNELS.map((value) => ({ value, label: CHANNEL_WORDS[value] }))}
        />
        <SelectField
          form={form}
          name="answer"
          label="Answer"
          options={[
            { value: 'agreed', label: 'agreed' },
            { value: 'refused', label: 'does not want it' },
          ]}
        />
        <DayField form={form} name="on" label="On" isNeeded />
        <TextField form={form} name="source" label="How we know" placeholder="on the phone, signed form …" isNeeded />
      </div>
    </DraftFormFrame>
  );
}
