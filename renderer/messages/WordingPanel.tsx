/** The firm's own wordings: changed here with the fields they may use; what comes with the program can be brought back. */
import { Button, Group, NativeSelect, Stack, Textarea, TextInput } from '@mantine/core';
import { useState } from 'react';
import { MESSAGE_FIELDS } from '../../domain/messages/fillTemplate.ts';
import type { MessageKind, MessageLanguage } from '../../domain/messages/messageKinds.ts';
import type { OutputOf } from '../../electron/contract/index.ts';
import { Answer } from '../kit/Answer.tsx';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Note } from '../kit/Note.tsx';
import { Panel } from '../kit/Panel.tsx';
import { optionsOf } from '../kit/tradeWords.ts';
import { useHasRole } from '../operations/AppStatus.tsx';
import { useAct } from '../operations/useAct.ts';
import { useOperation } from '../operations/useOperation.ts';
import { CHANNEL_WORDS, LANGUAGE_WORDS, MESSAGE_KIND_WORDS } from './messageWords.ts';

type Template = OutputOf<'messageTemplates.list'>[number];

export function WordingPanel() {
  const templates = useOperation('messageTemplates.list', {});
  const [kind, setKind] = useState<MessageKind>('service-due');
  const [channel, setChannel] = useState<keyof typeof CHANNEL_WORDS>('letter');
  const [language, setLanguage] = useState<MessageLanguage>('en');
  return (
    <Panel title="Wordings">
      <Stack gap="sm">
        <Group gap="sm" align="end">
          <NativeSelect
            label="Which"
            value={kind}
            data={[...optionsOf(MESSAGE_KIND_WORDS)]}
            onChange={(event) => setKind(event.currentTarget.value as MessageKind)}
          />
          <NativeSelect
            label="As"
            value={channel}
            data={[...optionsOf(CHANNEL_WORDS)]}
            onChange={(event) => setChannel(event.currentTarget.value as keyof typeof CHANNEL_WORDS)}
          />
          <NativeSelect
            label="Language"
            value={language}
            data={[...optionsOf(LANGUAGE_WORDS)]}
            onChange={(event) => setLanguage(event.currentTarget.value as MessageLanguage)}
          />
        </Group>
        <Answer of={templates}>
          {(all) => {
            const chosen = all.find((one) => one.kind === kind && one.channel === channel && one.language === language);
            return chosen === undefined ? null : (
              <Wording key={`${kind} ${channel} ${language} ${chosen.isOwn}`} template={chosen} />
            );
          }}
        </Answer>
      </Stack>
    </Panel>
  );
}

function Wording({ template }: { readonly template: Template }) {
  const { kind, channel, language, isOwn, awaitsNativeReader } = template;
  const mayEdit = useHasRole('owner', 'dispatcher');
  const save = useAct('messageTemplates.save');
  const reset = useAct('messageTemplates.reset');
  const [subject, setSubject] = useState(template.subject);
  const [body, setBody] = useState(template.body);
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        void save.act({ kind, channel, language, subject, body });
      }}
    >
      <Stack gap="sm">
        {awaitsNativeReader ? <Note tone="caution">This wording awaits a native reader.</Note> : null}
        <TextInput
          label="Subject"
          value={subject}
          readOnly={!mayEdit}
          onChange={(event) => setSubject(event.currentTarget.value)}
        />
        <Textarea
          label="Text"
          description={`May use: ${MESSAGE_FIELDS.map((field) => `{{${field}}}`).join(' ')}`}
          autosize
          minRows={8}
          value={body}
          readOnly={!mayEdit}
          onChange={(event) => setBody(event.currentTarget.value)}
        />
        <ErrorText error={save.error ?? reset.error} />
        {mayEdit ? (
          <Group gap="sm">
            <Button
              type="submit"
              loading={save.isBusy}
              disabled={subject === template.subject && body === template.body}
            >
              Keep this wording
            </Button>
            {isOwn ? (
              <Button
                variant="default"
                loading={reset.isBusy}
                onClick={() => void reset.act({ kind, channel, language })}
              >
                Back to the program’s own
              </Button>
            ) : null}
          </Group>
        ) : null}
      </Stack>
    </form>
  );
}
