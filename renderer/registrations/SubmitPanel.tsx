/** Submitting to the maker and the maker's confirmation, each with its day and proof. */
import { FileInput, Stack } from '@mantine/core';
import { useState } from 'react';
import type { OutputOf } from '../../electron/contract/index.ts';
import { DayField } from '../form/DayField.tsx';
import { DraftFormFrame } from '../form/DraftFormFrame.tsx';
import { TextField } from '../form/TextField.tsx';
import { useDraftForm } from '../form/useDraftForm.ts';
import { DateText } from '../kit/DateText.tsx';
import { DownloadButton } from '../kit/DownloadButton.tsx';
import { dayWords } from '../kit/dayWords.ts';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Facts } from '../kit/Facts.tsx';
import { Note } from '../kit/Note.tsx';
import { Panel } from '../kit/Panel.tsx';
import { useAppStatus } from '../operations/AppStatus.tsx';
import { useCore } from '../operations/CoreAccess.tsx';
import { KeyTo } from '../shortcuts/KeyTo.tsx';
import { CorrectPanel } from './CorrectPanel.tsx';

type Registration = OutputOf<'registrations.get'>;

export function SubmitPanel({ registration }: { readonly registration: Registration }) {
  const { state, submittedOn, confirmedOn, number, proofAttachmentId, note, takenBackWhy } = registration;
  return (
    <Panel title="Submitted and confirmed">
      <Stack gap="md">
        <Facts
          facts={[
            ['Submitted', submittedOn === null ? 'not yet' : <DateText key="submitted" day={submittedOn} />],
            ['Confirmed', confirmedOn === null ? 'not yet' : <DateText key="confirmed" day={confirmedOn} />],
            ...(number === null ? [] : ([['Maker’s number', number]] as const)),
            ...(proofAttachmentId === null
              ? []
              : ([
                  ['Proof', <DownloadButton key="proof" attachmentId={proofAttachmentId} what="maker’s proof" />],
                ] as const)),
            ...(note === null ? [] : ([['Note', note]] as const)),
            ...(takenBackWhy === null ? [] : ([['Last put right', takenBackWhy]] as const)),
          ]}
        />
        {submittedOn === null ? (
          <KeyTo keys="s" label="To handing it in">
            <SubmitForm registration={registration} />
          </KeyTo>
        ) : null}
        {submittedOn !== null && state !== 'confirmed' ? (
          <KeyTo keys="s" label="To the maker’s answer">
            <ConfirmForm registration={registration} />
          </KeyTo>
        ) : null}
        {submittedOn === null ? null : (
          <CorrectPanel key={`${state} ${submittedOn} ${confirmedOn} ${number}`} registration={registration} />
        )}
      </Stack>
    </Panel>
  );
}

function SubmitForm({ registration: { applianceId } }: { readonly registration: Registration }) {
  const { today } = useAppStatus();
  const form = useDraftForm({
    draftKey: `submit.${applianceId}`,
    operation: 'registrations.submit',
    initial: { submittedOn: dayWords(today), note: '' },
    toInput: (values, reader) => ({
      applianceId,
      submittedOn: reader.neededDay('submittedOn', values.submittedOn),
      note: reader.optional(values.note),
    }),
    onDone: () => undefined,
  });
  return (
    <DraftFormFrame form={form} submitLabel="Mark as submitted" failure={<ErrorText error={form.error} />}>
      <p className="lo-faint" style={{ margin: 0 }}>
        Send the packet the way the maker takes it: web form, e-mail or post. Nothing is sent from here by itself.
      </p>
      <div className="lo-fields">
        <DayField form={form} name="submittedOn" label="Submitted on" isNeeded />
        <TextField form={form} name="note" label="How" placeholder="maker’s web form, e-mail …" />
      </div>
    </DraftFormFrame>
  );
}

function ConfirmForm({ registration: { applianceId } }: { readonly registration: Registration }) {
  const { today } = useAppStatus();
  const core = useCore();
  const [proof, setProof] = useState<{ readonly name: string; readonly attachmentId: string } | null>(null);
  const [refused, setRefused] = useState<string | null>(null);
  const form = useDraftForm({
    draftKey: `confirm.${applianceId}`,
    operation: 'registrations.confirm',
    initial: { confirmedOn: dayWords(today), number: '' },
    toInput: (values, reader) => ({
      applianceId,
      confirmedOn: reader.neededDay('confirmedOn', values.confirmedOn),
      number: values.number,
      proofAttachmentId: proof?.attachmentId ?? null,
    }),
    onDone: () => undefined,
  });
  const store = async (file: File | null) => {
    setProof(null);
    setRefused(null);
    if (file === null) return;
    const reply = await core.putFile({
      bytes: new Uint8Array(await file.arrayBuffer()),
      mediaType: file.type,
      fileName: file.name,
      takenAt: null,
    });
    if (reply.ok) setProof({ name: file.name, attachmentId: reply.attachmentId });
    else setRefused(`The file was not taken (${reply.code.replaceAll('-', ' ')}).`);
  };
  return (
    <DraftFormFrame form={form} submitLabel="Mark as confirmed" failure={<ErrorText error={form.error} />}>
      <div className="lo-fields">
        <DayField form={form} name="confirmedOn" label="Confirmed on" isNeeded />
        <TextField form={form} name="number" label="Maker’s number" isNeeded />
        <FileInput
          label="Proof"
          description="The maker’s letter or screen, as PDF or picture."
          accept="application/pdf,image/png,image/jpeg"
          clearable
          placeholder="Choose a file"
          onChange={(file) => void store(file)}
        />
      </div>
      {proof === null ? null : <Note tone="fir">{proof.name} is kept.</Note>}
      {refused === null ? null : (
        <Note tone="ember" isSpoken>
          {refused}
        </Note>
      )}
    </DraftFormFrame>
  );
}
