/** Makes and saves the one-page sheet that stays with the people who live there. */
import { Button, Group, NativeSelect } from '@mantine/core';
import { useState } from 'react';
import type { MessageLanguage } from '../../domain/messages/messageKinds.ts';
import { downloadAttachment } from '../kit/downloadFile.ts';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Note } from '../kit/Note.tsx';
import { optionsOf } from '../kit/tradeWords.ts';
import { LANGUAGE_WORDS } from '../messages/messageWords.ts';
import { useCore } from '../operations/CoreAccess.tsx';
import { useAct } from '../operations/useAct.ts';
import { useOperation } from '../operations/useOperation.ts';
import { handoverLanguageWords } from './handoverLanguageWords.ts';

export function HandoverSheet({ runId, serial }: { readonly runId: string; readonly serial: string }) {
  const core = useCore();
  const build = useAct('handovers.build');
  const onFile = useOperation('handovers.getLanguage', { runId });
  const [language, setLanguage] = useState<MessageLanguage | null>(null);
  const [awaits, setAwaits] = useState(false);
  const make = async () => {
    const reply = await build.act({ runId, language });
    if (!reply.ok) return;
    setAwaits(reply.value.awaitsNativeReader);
    await downloadAttachment(core, reply.value.attachmentId);
  };
  return (
    <div>
      <Group gap="sm">
        <NativeSelect
          aria-label={`Language of the handover sheet, ${serial}`}
          value={language ?? ''}
          data={[
            { value: '', label: onFile.state === 'ready' ? handoverLanguageWords(onFile.value) : 'Their language' },
            ...optionsOf(LANGUAGE_WORDS),
          ]}
          onChange={(event) => setLanguage((event.currentTarget.value || null) as MessageLanguage | null)}
        />
        <Button variant="default" loading={build.isBusy} onClick={() => void make()}>
          Handover sheet for {serial}
        </Button>
      </Group>
      {awaits ? (
        <Note tone="caution" isSpoken>
          The French and Spanish words await a native reader: read the sheet before you leave it.
        </Note>
      ) : null}
      <ErrorText error={build.error} />
    </div>
  );
}
