/** What was prepared, newest first, and what became of it. */
import { Button, Group, NativeSelect } from '@mantine/core';
import { useState } from 'react';
import { Answer } from '../kit/Answer.tsx';
import { DateText, InstantText } from '../kit/DateText.tsx';
import { DownloadButton } from '../kit/DownloadButton.tsx';
import { dayWords } from '../kit/dayWords.ts';
import { EmptyState } from '../kit/EmptyState.tsx';
import { ErrorText } from '../kit/ErrorText.tsx';
import { PageTurner } from '../kit/PageTurner.tsx';
import { Panel } from '../kit/Panel.tsx';
import { PlainTable } from '../kit/PlainTable.tsx';
import { optionsOf } from '../kit/tradeWords.ts';
import { useAppStatus, useHasRole } from '../operations/AppStatus.tsx';
import { useAct } from '../operations/useAct.ts';
import { useOperation } from '../operations/useOperation.ts';
import { usePages } from '../operations/usePages.ts';
import { FATE_WORDS } from './messageWords.ts';

export function LogPanel() {
  const pages = usePages('messages');
  const mayNote = useHasRole('owner', 'dispatcher');
  const found = useOperation('messages.list', { limit: 20, after: pages.after });
  return (
    <Panel title="Prepared so far">
      <Answer of={found}>
        {({ rows, next }) =>
          rows.length === 0 ? (
            <EmptyState title="Nothing prepared yet">
              What was made for people is listed here, with its file.
            </EmptyState>
          ) : (
            <>
              <PlainTable
                caption="Prepared messages"
                rows={rows}
                keyOf={({ messageId }) => messageId}
                columns={[
                  { label: 'Whom', cell: ({ name }) => name },
                  { label: 'What', cell: ({ subject, channel }) => `${subject} (${channel})` },
                  { label: 'Day', cell: ({ aboutOn }) => (aboutOn === null ? '' : <DateText day={aboutOn} />) },
                  {
                    label: 'Prepared',
                    cell: ({ preparedAt, preparedByName }) => (
                      <>
                        <InstantText at={preparedAt} />, {preparedByName}
                      </>
                    ),
                  },
                  {
                    label: 'What came of it',
                    cell: ({ messageId, name, events }) => (
                      <>
                        {events.map(({ kind, on, note }) => (
                          <div key={`${kind} ${on} ${note}`}>
                            {FATE_WORDS[kind]} {dayWords(on)}
                            {note === null ? null : <span className="lo-faint">: {note}</span>}
                          </div>
                        ))}
                        {mayNote ? <NoteFate messageId={messageId} name={name} /> : null}
                      </>
                    ),
                  },
                  {
                    label: 'File',
                    cell: ({ attachmentId, name }) =>
                      attachmentId === null ? (
                        ''
                      ) : (
                        <DownloadButton attachmentId={attachmentId} what={`file of ${name}`} />
                      ),
                  },
                ]}
              />
              <PageTurner pages={pages} next={next} />
            </>
          )
        }
      </Answer>
    </Panel>
  );
}

function NoteFate({ messageId, name }: { readonly messageId: string; readonly name: string }) {
  const { today } = useAppStatus();
  const record = useAct('messages.record');
  const [kind, setKind] = useState<keyof typeof FATE_WORDS>('sent');
  return (
    <Group gap="xs" wrap="nowrap">
      <NativeSelect
        aria-label={`What came of it, ${name}`}
        value={kind}
        data={[...optionsOf(FATE_WORDS)]}
        onChange={(event) => setKind(event.currentTarget.value as keyof typeof FATE_WORDS)}
      />
      <Button
        variant="default"
        style={{ flexShrink: 0 }}
        loading={record.isBusy}
        aria-label={`Note today, ${name}`}
        onClick={() => void record.act({ messageIds: [messageId], kind, on: today, note: null })}
      >
        Note today
      </Button>
      <ErrorText error={record.error} />
    </Group>
  );
}
