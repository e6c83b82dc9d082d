/** The reminders that stand, each as it would read; what is missing is said before anything is made. */
import { Button, Checkbox, Group, NativeSelect, Stack } from '@mantine/core';
import { useState } from 'react';
import type { ReminderRow } from '../../electron/contract/dues.ts';
import type { MessagePreview } from '../../electron/contract/messages.ts';
import { Answer } from '../kit/Answer.tsx';
import { DateText } from '../kit/DateText.tsx';
import { downloadAttachment, saveText } from '../kit/downloadFile.ts';
import { EmptyState } from '../kit/EmptyState.tsx';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Note } from '../kit/Note.tsx';
import { Panel } from '../kit/Panel.tsx';
import { PlainTable } from '../kit/PlainTable.tsx';
import { optionsOf } from '../kit/tradeWords.ts';
import { useHasRole } from '../operations/AppStatus.tsx';
import { useCore } from '../operations/CoreAccess.tsx';
import { useAct } from '../operations/useAct.ts';
import { useOperation } from '../operations/useOperation.ts';
import { CHANNEL_WORDS, LANGUAGE_WORDS, LEFT_OUT_WORDS } from './messageWords.ts';

type Channel = keyof typeof CHANNEL_WORDS;
type Form = 'one-file' | 'one-each' | 'mail-merge';

/** More are prepared in a second round: each is looked at first. */
const AT_ONCE = 200;

export function PreparePanel({ onMade }: { readonly onMade: () => void }) {
  const [channel, setChannel] = useState<Channel>('letter');
  const reminders = useOperation('reminders.list', { onlyReachable: true, limit: AT_ONCE });
  return (
    <Panel
      title="Reminders to prepare"
      action={
        <Group gap="sm">
          <NativeSelect
            aria-label="As"
            value={channel}
            data={[...optionsOf(CHANNEL_WORDS)]}
            onChange={(event) => setChannel(event.currentTarget.value as Channel)}
          />
          <CalendarButton />
        </Group>
      }
    >
      <Answer of={reminders}>
        {({ rows }) => {
          const reachable = rows.filter(({ channels }) => channels.includes(channel));
          return reachable.length === 0 ? (
            <EmptyState title="Nobody to write to today">
              Reminders that stand and whose person agreed to a {CHANNEL_WORDS[channel]} get here. Consent is kept on
              the customer.
            </EmptyState>
          ) : (
            <Prepare key={channel} rows={reachable} channel={channel} onMade={onMade} />
          );
        }}
      </Answer>
    </Panel>
  );
}

function Prepare({
  rows,
  channel,
  onMade,
}: {
  readonly rows: readonly ReminderRow[];
  readonly channel: Channel;
  readonly onMade: () => void;
}) {
  const core = useCore();
  const mayPrepare = useHasRole('owner', 'dispatcher');
  const [form, setForm] = useState<Form>('one-file');
  const [unwanted, setUnwanted] = useState<ReadonlySet<string>>(new Set());
  const [made, setMade] = useState<string | null>(null);
  const prepare = useAct('messages.prepare');
  const checked = useOperation('messages.check', { keys: rows.map(({ key }) => key), channel });
  const start = async (previews: readonly MessagePreview[]) => {
    const keys = previews.filter(({ key }) => !unwanted.has(key)).map(({ key }) => key);
    const reply = await prepare.act({ keys, channel, form });
    if (!reply.ok) return;
    await downloadAttachment(core, reply.value.attachmentId);
    const { preparedCount, leftOut, fileName } = reply.value;
    setMade(
      `${preparedCount} prepared in ${fileName}${leftOut.length === 0 ? '.' : `; left out: ${leftOut.map(({ name, because }) => `${name} (${LEFT_OUT_WORDS[because]})`).join(', ')}.`}`,
    );
  };
  if (made !== null) {
    return (
      <Note
        tone="fir"
        isSpoken
        action={
          <Button variant="default" onClick={onMade}>
            Go on
          </Button>
        }
      >
        {made} Send them from your own mail or by post, then note it below.
      </Note>
    );
  }
  return (
    <Answer of={checked}>
      {(previews) => {
        const going = previews.filter(({ key, leftOutBecause }) => leftOutBecause === null && !unwanted.has(key));
        return (
          <Stack gap="md">
            <PlainTable
              caption="Reminders to prepare"
              rows={previews}
              keyOf={({ key }) => key}
              columns={[
                {
                  label: 'Whom',
                  cell: ({ key, name, leftOutBecause }) => (
                    <Checkbox
                      label={name}
                      disabled={leftOutBecause !== null}
                      checked={leftOutBecause === null && !unwanted.has(key)}
                      onChange={(event) => {
                        const isWanted = event.currentTarget.checked;
                        setUnwanted((before) => {
                          const next = new Set(before);
                          if (isWanted) next.delete(key);
                          else next.add(key);
                          return next;
                        });
                      }}
                    />
                  ),
                },
                { label: 'To', cell: ({ to }) => to ?? '' },
                { label: 'About', cell: ({ aboutOn }) => (aboutOn === null ? '' : <DateText day={aboutOn} />) },
                { label: 'Language', cell: ({ language }) => LANGUAGE_WORDS[language] },
                { label: 'As it reads', cell: (preview) => <AsItReads preview={preview} /> },
              ]}
            />
            {going.some(({ awaitsNativeReader }) => awaitsNativeReader) ? (
              <Note tone="caution">
                The French and Spanish wordings that come with the program await a native reader: read them before they
                go out, or put in your own below.
              </Note>
            ) : null}
            <ErrorText error={prepare.error} />
            {mayPrepare ? (
              <Group gap="sm">
                <NativeSelect
                  aria-label="As which file"
                  value={form}
                  data={
                    channel === 'letter'
                      ? [
                          { value: 'one-file', label: 'one PDF to print' },
                          { value: 'one-each', label: 'a PDF for each, in a ZIP' },
                          { value: 'mail-merge', label: 'a table for mail merge (CSV)' },
                        ]
                      : [
                          { value: 'one-file', label: 'drafts (.eml) in a ZIP' },
                          { value: 'mail-merge', label: 'a table for mail merge (CSV)' },
                        ]
                  }
                  onChange={(event) => setForm(event.currentTarget.value as Form)}
                />
                <Button loading={prepare.isBusy} disabled={going.length === 0} onClick={() => void start(previews)}>
                  {going.length === 1 ? 'Prepare 1 reminder' : `Prepare ${going.length} reminders`}
                </Button>
              </Group>
            ) : null}
          </Stack>
        );
      }}
    </Answer>
  );
}

function AsItReads({ preview }: { readonly preview: MessagePreview }) {
  const { subject, body, missing, leftOutBecause } = preview;
  return (
    <>
      {leftOutBecause === null ? null : (
        <div>
          <b>Left out:</b> {LEFT_OUT_WORDS[leftOutBecause]}
          {missing.length === 0 ? '' : `: ${missing.join(', ')}`}
        </div>
      )}
      <details>
        <summary>{subject}</summary>
        <p style={{ whiteSpace: 'pre-wrap', maxInlineSize: '60ch' }}>{body}</p>
      </details>
    </>
  );
}

function CalendarButton() {
  const make = useAct('dueCalendars.export');
  return (
    <>
      <Button
        variant="default"
        loading={make.isBusy}
        onClick={async () => {
          const reply = await make.act({});
          if (reply.ok) saveText(reply.value.text, 'text/calendar', reply.value.fileName);
        }}
      >
        Due days as a calendar
      </Button>
      <ErrorText error={make.error} />
    </>
  );
}
