/** The readiness call: item by item what the site has, who said so and when. What is not given blocks a firm booking. */
import { Button, SegmentedControl, Stack, TextInput } from '@mantine/core';
import { useState } from 'react';
import { READINESS_ITEMS, type ReadinessHinders, type ReadinessItem } from '../../domain/procedure/readiness.ts';
import type { OutputOf } from '../../electron/contract/index.ts';
import { InstantText } from '../kit/DateText.tsx';
import { type ErrorCode, type ErrorWith, errorWords } from '../kit/errorWords.ts';
import { FieldSaved, type SaveState } from '../kit/FieldSaved.tsx';
import { Panel } from '../kit/Panel.tsx';
import { useHasRole } from '../operations/AppStatus.tsx';
import { useAct } from '../operations/useAct.ts';
import { useUnsaved } from '../shell/LeaveGuard.tsx';
import { GasLoadGaps } from '../sites/GasLoadGaps.tsx';
import { GasLoadNote } from '../sites/GasLoadNote.tsx';
import { PhotoRequests } from './PhotoRequests.tsx';

type Readiness = OutputOf<'jobs.getReadiness'>;
type Given = Readiness['items'][number];
type AnswerKey = NonNullable<Given['answer']>;

const ANSWERS: readonly { readonly value: AnswerKey; readonly label: string }[] = [
  { value: 'yes', label: 'Yes' },
  { value: 'no', label: 'No' },
  { value: 'unknown', label: 'Not known' },
  { value: 'not-applicable', label: 'Not needed' },
];

const ANSWER_KEYS: Readonly<Record<string, AnswerKey>> = { y: 'yes', n: 'no', u: 'unknown', x: 'not-applicable' };

/** The answer of the next item; after the last one the keyboard stays. */
function focusNext(answer: HTMLElement): void {
  const next = answer.closest('.lo-ready')?.nextElementSibling;
  const choice =
    next?.querySelector<HTMLElement>('input[type="radio"]:checked') ??
    next?.querySelector<HTMLElement>('input[type="radio"]');
  choice?.focus();
}

const HINDERS_WORDS: Readonly<Record<ReadinessHinders, string>> = {
  visit: 'else a wasted trip',
  firing: 'else it cannot be lit',
  leaving: 'else the visit cannot be finished',
  testing: 'else a test cannot be done',
  papers: 'else the papers wait',
};

export function ReadinessPanel({
  readiness,
  siteId,
}: {
  readonly readiness: Readiness;
  readonly siteId: string | null;
}) {
  const given = new Map(readiness.items.map((item) => [item.itemKey, item]));
  const blocking = READINESS_ITEMS.filter(({ blocksBooking }) => blocksBooking);
  const aged = new Map(readiness.aged.map(({ itemKey, askedDaysAgo }) => [itemKey, askedDaysAgo]));
  const open = blocking.filter(({ key }) => !isGiven(given.get(key)?.answer ?? null));
  return (
    <Panel
      title="Readiness"
      action={
        <strong role="status" style={{ color: open.length + aged.size === 0 ? 'var(--lo-fir)' : 'var(--lo-ochre)' }}>
          {open.length === 0
            ? `ready for a firm booking${aged.size === 0 ? '' : `, ${aged.size} to ask again`}`
            : `${open.length} of ${blocking.length} that must be given ${open.length === 1 ? 'is' : 'are'} open`}
        </strong>
      }
    >
      <Stack gap="md">
        <p className="lo-faint" style={{ margin: 0 }}>
          Asked on the phone one to three days ahead and again the same morning. “Ready” said by a builder is not ready
          seen: ask for three photos.
        </p>
        <PhotoRequests jobId={readiness.jobId} />
        {readiness.gasLoad === null ? null : <GasLoadNote balance={readiness.gasLoad} />}
        {siteId === null ? null : <GasLoadGaps siteId={siteId} />}
        <p className="lo-faint" style={{ margin: 0 }}>
          On an answer: <kbd className="lo-key">y</kbd> yes, <kbd className="lo-key">n</kbd> no,{' '}
          <kbd className="lo-key">u</kbd> not known, <kbd className="lo-key">x</kbd> not needed,{' '}
          <kbd className="lo-key">a</kbd> asked again today, unchanged; each goes on to the next.
        </p>
        <div>
          {READINESS_ITEMS.map((item) => (
            <ItemRow
              key={item.key}
              jobId={readiness.jobId}
              item={item}
              given={given.get(item.key) ?? null}
              askedDaysAgo={aged.get(item.key) ?? null}
            />
          ))}
        </div>
      </Stack>
    </Panel>
  );
}

function ItemRow({
  jobId,
  item,
  given,
  askedDaysAgo,
}: {
  readonly jobId: string;
  readonly item: ReadinessItem;
  readonly given: Given | null;
  /** null: fresh enough, or nothing that grows old. */
  readonly askedDaysAgo: number | null;
}) {
  const set = useAct('jobs.setReadiness');
  const mayAnswer = useHasRole('dispatcher', 'owner', 'technician');
  const [note, setNote] = useState(given?.note ?? '');
  const [confirmedBy, setConfirmedBy] = useState(given?.confirmedBy ?? '');
  const [state, setState] = useState<SaveState>({ kind: 'idle' });
  const isTyped = note !== (given?.note ?? '') || confirmedBy !== (given?.confirmedBy ?? '');
  useUnsaved(state.kind === 'not-saved' ? `“${item.label}” is not saved: ${state.why}` : null);

  const save = async (answer: AnswerKey) => {
    setState({ kind: 'saving' });
    const reply = await set.act({
      jobId,
      itemKey: item.key,
      answer,
      note: note.trim() === '' ? null : note,
      confirmedBy: confirmedBy.trim() === '' ? null : confirmedBy,
    });
    setState(
      reply.ok ? { kind: 'saved' } : { kind: 'not-saved', why: errorWords(reply.error as ErrorWith<ErrorCode>) },
    );
  };
  const saveTyped = () => {
    if (isTyped) void save(given?.answer ?? 'unknown');
  };
  return (
    <div className="lo-ready" data-open={item.blocksBooking && !isGiven(given?.answer ?? null)}>
      <div>
        <div style={{ fontWeight: 600 }} id={`ready-${item.key}`}>
          {item.label}
        </div>
        <div className="lo-faint">
          {item.blocksBooking ? 'Must be given' : 'Better known'}, {HINDERS_WORDS[item.hinders]}.
          {item.photoHelps ? ' A photo helps.' : ''} {item.caution === null ? '' : sentence(item.caution)}
        </div>
      </div>
      <div>
        <SegmentedControl
          aria-labelledby={`ready-${item.key}`}
          fullWidth
          disabled={!mayAnswer}
          onKeyDown={(event) => {
            const pressed = event.ctrlKey || event.altKey || event.metaKey ? '' : event.key;
            const answer = pressed === 'a' ? (given?.answer ?? undefined) : ANSWER_KEYS[pressed];
            if (answer === undefined) return;
            event.preventDefault();
            void save(answer);
            focusNext(event.currentTarget);
          }}
          value={given?.answer ?? ''}
          data={[...ANSWERS]}
          onChange={(answer) => {
            const known = ANSWERS.find(({ value }) => value === answer);
            if (known) void save(known.value);
          }}
        />
        <div className="lo-faint lo-ready-state">
          {given?.recordedAt ? (
            <span>
              {given.recordedByName}, <InstantText at={given.recordedAt} />
            </span>
          ) : null}
          {askedDaysAgo === null ? null : (
            <>
              <strong style={{ color: 'var(--lo-ochre)' }}>asked {askedDaysAgo} days ago</strong>
              <Button variant="default" disabled={!mayAnswer} onClick={() => void save(given?.answer ?? 'unknown')}>
                Asked again, unchanged
              </Button>
            </>
          )}
          <FieldSaved state={state} />
          {state.kind === 'not-saved' ? (
            <Button variant="default" onClick={() => void save(given?.answer ?? 'unknown')}>
              Try again
            </Button>
          ) : null}
        </div>
      </div>
      <div className="lo-ready-notes">
        <TextInput
          aria-label={`${item.label}: note`}
          placeholder={item.note}
          title={item.note}
          autoComplete="off"
          value={note}
          disabled={!mayAnswer}
          onChange={(event) => setNote(event.currentTarget.value)}
          onBlur={saveTyped}
        />
        <TextInput
          aria-label={`${item.label}: who said so`}
          placeholder="who said so"
          autoComplete="off"
          value={confirmedBy}
          disabled={!mayAnswer}
          onChange={(event) => setConfirmedBy(event.currentTarget.value)}
          onBlur={saveTyped}
        />
      </div>
    </div>
  );
}

function sentence(text: string): string {
  return /[.?!]$/.test(text) ? text : `${text}.`;
}

function isGiven(answer: AnswerKey | null): boolean {
  return answer === 'yes' || answer === 'not-applicable';
}
