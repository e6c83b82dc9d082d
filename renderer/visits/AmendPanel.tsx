/** Amendments to a sealed record: what stands beside it, and adding one. What was sealed is never touched. */
import { Button, Group, NativeSelect, Stack, Textarea, TextInput } from '@mantine/core';
import { useEffect, useRef, useState } from 'react';
import { heaviestVerdict } from '../../domain/judgement/verdictRank.ts';
import type { OutputOf } from '../../electron/contract/index.ts';
import { Answer } from '../kit/Answer.tsx';
import { instantWords } from '../kit/dayWords.ts';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Note } from '../kit/Note.tsx';
import { Panel } from '../kit/Panel.tsx';
import { PlainTable } from '../kit/PlainTable.tsx';
import { VerdictMark } from '../kit/VerdictMark.tsx';
import { useHasRole } from '../operations/AppStatus.tsx';
import { useAct } from '../operations/useAct.ts';
import { useOperation } from '../operations/useOperation.ts';
import { RouteLink } from '../RouteLink.tsx';
import { useUnsaved } from '../shell/LeaveGuard.tsx';

export function AmendPanel({
  runId,
  applianceId,
  serial,
}: {
  readonly runId: string;
  readonly applianceId: string;
  readonly serial: string;
}) {
  const found = useOperation('records.getAmendments', { runId });
  const mayAmend = useHasRole('technician', 'owner');
  const [isWriting, setIsWriting] = useState(false);
  const [isStop, setIsStop] = useState(false);
  const button = useRef<HTMLButtonElement>(null);
  const wasWriting = useRef(false);
  const stop = useRef<HTMLDivElement>(null);
  // What had the keyboard goes away with the form; a stop comes before everything else.
  useEffect(() => {
    if (wasWriting.current && !isWriting) (stop.current?.querySelector('a') ?? button.current)?.focus();
    wasWriting.current = isWriting;
  }, [isWriting]);
  return (
    <Panel
      title={`Amendments to the record of ${serial}`}
      action={
        mayAmend && !isWriting ? (
          <Button ref={button} variant="default" onClick={() => setIsWriting(true)}>
            Add an amendment
          </Button>
        ) : undefined
      }
    >
      <Answer of={found}>
        {({ amendments, fields }) => (
          <Stack gap="md">
            <Amendments amendments={amendments} />
            {isStop ? (
              <div ref={stop}>
                <Note tone="ember" isSpoken title="Stop: make safe now">
                  The amended number is at a stop. Have the gas shut off at the boiler and the people there told, before
                  anything else. A make-safe is open:{' '}
                  <RouteLink to="appliance" params={{ applianceId }}>
                    write down what was done
                  </RouteLink>
                  .
                </Note>
              </div>
            ) : null}
            {isWriting ? (
              <AmendForm
                runId={runId}
                fields={fields}
                onDone={(stops) => {
                  setIsWriting(false);
                  setIsStop((before) => before || stops);
                }}
              />
            ) : null}
          </Stack>
        )}
      </Answer>
    </Panel>
  );
}

type Found = OutputOf<'records.getAmendments'>;

function Amendments({ amendments }: Pick<Found, 'amendments'>) {
  if (amendments.length === 0) return <p className="lo-faint">None. The record stands as it was sealed.</p>;
  return (
    <PlainTable
      caption="Amendments"
      rows={amendments}
      keyOf={({ at, what, isNow }) => `${at} ${what} ${isNow}`}
      columns={[
        { label: 'What', cell: ({ what }) => what },
        { label: 'Was', cell: ({ was }) => was ?? 'not recorded' },
        { label: 'Is now', cell: ({ isNow, judged }) => <IsNow isNow={isNow} judged={judged} /> },
        { label: 'Because', cell: ({ because }) => because },
        { label: 'By', cell: ({ byName, at }) => `${byName}, ${instantWords(at)}` },
      ]}
    />
  );
}

function IsNow({ isNow, judged }: Pick<Found['amendments'][number], 'isNow' | 'judged'>) {
  const heaviest = heaviestVerdict(judged);
  return (
    <>
      {isNow}
      {heaviest === undefined ? null : (
        <div>
          <VerdictMark verdict={heaviest} />
        </div>
      )}
    </>
  );
}

const NOT_A_FIELD = '';

function AmendForm({
  runId,
  fields,
  onDone,
}: {
  readonly runId: string;
  readonly fields: Found['fields'];
  readonly onDone: (isStop: boolean) => void;
}) {
  const amend = useAct('records.amend');
  const [path, setPath] = useState(fields[0]?.path ?? NOT_A_FIELD);
  const [what, setWhat] = useState('');
  const [isNow, setIsNow] = useState('');
  const [because, setBecause] = useState('');
  const field = fields.find((one) => one.path === path);
  const first = useRef<HTMLSelectElement>(null);
  useEffect(() => first.current?.focus(), []);
  const isTyped = `${what}${isNow}${because}`.trim() !== '';
  useUnsaved(isTyped ? 'An amendment is typed, and not sealed yet.' : null);
  const isReady = isNow.trim() !== '' && because.trim() !== '' && (field !== undefined || what.trim() !== '');
  return (
    <form
      onSubmit={async (event) => {
        event.preventDefault();
        const reply = await amend.act({
          runId,
          path: field?.path ?? null,
          what: field === undefined ? what.trim() : null,
          isNow: isNow.trim(),
          because: because.trim(),
        });
        if (reply.ok) onDone(reply.value.makeSafeId !== null);
      }}
    >
      <Stack gap="sm" maw="44rem">
        <p style={{ margin: 0 }}>
          It is written beside what was sealed, with your name and the time, and chained to it. A reading is judged
          again: one that would turn a bad finding good is read anew on a visit; one at a stop opens a make-safe.
        </p>
        <NativeSelect
          label="What"
          ref={first}
          value={path}
          data={[
            ...fields.map((one) => ({ value: one.path, label: one.what })),
            { value: NOT_A_FIELD, label: 'something the record does not hold' },
          ]}
          onChange={(event) => setPath(event.currentTarget.value)}
        />
        {field === undefined ? (
          <TextInput label="Which is" required value={what} onChange={(event) => setWhat(event.currentTarget.value)} />
        ) : (
          <p style={{ margin: 0 }}>
            The record says: <b>{field.says ?? 'nothing'}</b>
          </p>
        )}
        <Textarea
          label="Is now"
          required
          autosize
          minRows={1}
          value={isNow}
          onChange={(event) => setIsNow(event.currentTarget.value)}
        />
        <TextInput
          label="Because"
          required
          autoComplete="off"
          value={because}
          onChange={(event) => setBecause(event.currentTarget.value)}
        />
        <ErrorText error={amend.error} />
        <Group gap="sm">
          <Button type="submit" loading={amend.isBusy} disabled={!isReady}>
            Seal the amendment
          </Button>
          <Button variant="default" onClick={() => onDone(false)}>
            Leave it as it is
          </Button>
        </Group>
      </Stack>
    </form>
  );
}
