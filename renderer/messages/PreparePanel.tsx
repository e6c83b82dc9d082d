/** What could be written today, each as it would read; what is missing is said before anything is made. */
import { Button, Checkbox, Group, NativeSelect, Stack } from '@mantine/core';
import { type ReactNode, useState } from 'react';
import type { InputOf } from '../../electron/contract/index.ts';
import type { MessagePreview } from '../../electron/contract/messages.ts';
import { Answer } from '../kit/Answer.tsx';
import { DateText } from '../kit/DateText.tsx';
import { downloadAttachment } from '../kit/downloadFile.ts';
import { EmptyState } from '../kit/EmptyState.tsx';
import { ErrorText } from '../kit/ErrorText.tsx';
import { LedTo } from '../kit/LedTo.tsx';
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
type Language = keyof typeof LANGUAGE_WORDS;
type Form = 'one-file' | 'one-each' | 'mail-merge';

/** More are prepared in a second round: each is looked at first. */
const AT_ONCE = 200;

export type About = InputOf<'messages.standing'>['about'];

export function PreparePanel({
  title,
  about,
  firstChannel = 'letter',
  empty,
  action,
}: {
  readonly title: string;
  readonly about: About;
  readonly firstChannel?: Channel;
  /** What belongs here and how it gets here. */
  readonly empty: string;
  readonly action?: ReactNode;
}) {
  const [channel, setChannel] = useState<Channel>(firstChannel);
  const [language, setLanguage] = useState<Language | ''>('');
  const [made, setMade] = useState(0);
  const standing = useOperation('messages.standing', { about, channel, limit: AT_ONCE });
  return (
    <Panel
      title={title}
      action={
        <Group gap="sm">
          <NativeSelect
            aria-label="As"
            value={channel}
            data={[...optionsOf(CHANNEL_WORDS)]}
            onChange={(event) => setChannel(event.currentTarget.value as Channel)}
          />
          <NativeSelect
            aria-label="In which language"
            value={language}
            data={[{ value: '', label: 'each in their language' }, ...optionsOf(LANGUAGE_WORDS)]}
            onChange={(event) => setLanguage(event.currentTarget.value as Language | '')}
          />
          {action}
        </Group>
      }
    >
      <Answer of={standing}>
        {({ keys, total }) =>
          keys.length === 0 ? (
            <EmptyState title="Nobody to write to today">{empty}</EmptyState>
          ) : (
            <>
              <Prepare
                key={`${channel} ${language} ${made}`}
                keys={keys}
                channel={channel}
                language={language === '' ? null : language}
                onMade={() => setMade(made + 1)}
              />
              {total > keys.length ? (
                <p className="lo-faint" style={{ margin: 0 }}>
                  {keys.length} of {total}: the others come once these are prepared.
                </p>
              ) : null}
            </>
          )
        }
      </Answer>
    </Panel>
  );
}

function Prepare({
  keys,
  channel,
  language,
  onMade,
}: {
  readonly keys: readonly string[];
  readonly channel: Channel;
  /** null: each person's own. */
  readonly language: Language | null;
  readonly onMade: () => void;
}) {
  const core = useCore();
  const mayPrepare = useHasRole('owner', 'dispatcher');
  const [form, setForm] = useState<Form>('one-file');
  const [unwanted, setUnwanted] = useState<ReadonlySet<string>>(new Set());
  const [made, setMade] = useState<string | null>(null);
  const prepare = useAct('messages.prepare');
  const checked = useOperation('messages.check', { keys: [...keys], channel, language });
  const start = async (previews: readonly MessagePreview[]) => {
    const wanted = previews.filter(({ key }) => !unwanted.has(key)).map(({ key }) => key);
    const reply = await prepare.act({ keys: wanted, channel, language, form });
    if (!reply.ok) return;
    await downloadAttachment(core, reply.value.attachmentId);
    const { preparedCount, leftOut, fileName } = reply.value;
    setMade(
      `${preparedCount} prepared in ${fileName}${leftOut.length === 0 ? '.' : `; left out: ${leftOut.map(({ name, because }) => `${name} (${LEFT_OUT_WORDS[because]})`).join(', ')}.`}`,
    );
  };
  if (made !== null) {
    return (
      <LedTo>
        <Note
          tone="fir"
          isSpoken
          action={
            <Button variant="default" onClick={onMade}>
              Go on
            </Button>
          }
        >
          {made} Send them from your own mail, phone or by post, then note it under “Letters and e-mails”.
        </Note>
      </LedTo>
    );
  }
  return (
    <Answer of={checked}>
      {(previews) => {
        const going = previews.filter(({ key, leftOutBecause }) => leftOutBecause === null && !unwanted.has(key));
        return (
          <Stack gap="md">
            <PlainTable
              caption="To prepare"
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
                { label: 'Day', cell: ({ aboutOn }) => (aboutOn === null ? '' : <DateText day={aboutOn} />) },
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
                  data={[...FORMS[channel]]}
                  onChange={(event) => setForm(event.currentTarget.value as Form)}
                />
                <Button loading={prepare.isBusy} disabled={going.length === 0} onClick={() => void start(previews)}>
                  {going.length === 1 ? 'Prepare 1 message' : `Prepare ${going.length} messages`}
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

const MAIL_MERGE = { value: 'mail-merge', label: 'a table for mail merge (CSV)' };

const FORMS: Readonly<Record<Channel, readonly { readonly value: string; readonly label: string }[]>> = {
  letter: [
    { value: 'one-file', label: 'one PDF to print' },
    { value: 'one-each', label: 'a PDF for each, in a ZIP' },
    MAIL_MERGE,
  ],
  'e-mail': [{ value: 'one-file', label: 'drafts (.eml) in a ZIP' }, MAIL_MERGE],
  text: [{ value: 'one-file', label: 'a file to copy them from' }, MAIL_MERGE],
};
