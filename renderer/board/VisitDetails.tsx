/** The visit chosen on the board: what it is, what does not fit, moving it by typing, pins, and whether the customer was told. */
import { Button, Checkbox, Group, NativeSelect, Stack, TextInput } from '@mantine/core';
import { Fragment, useState } from 'react';
import { isGrave } from '../../domain/schedule/dayConflicts.ts';
import { wallMinute } from '../../domain/schedule/wallClock.ts';
import { DayInput } from '../form/DayField.tsx';
import { readDay } from '../form/FormReader.ts';
import { durationWords, readDuration, readTime } from '../form/readTime.ts';
import { AskReason } from '../kit/AskReason.tsx';
import { capital } from '../kit/capital.ts';
import { clockWords, dayWords } from '../kit/dayWords.ts';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Facts } from '../kit/Facts.tsx';
import { MakeSafeCount } from '../kit/MakeSafeCount.tsx';
import { Panel } from '../kit/Panel.tsx';
import { JOB_KIND_WORDS, VISIT_STATE_WORDS } from '../kit/tradeWords.ts';
import { useAct } from '../operations/useAct.ts';
import { RouteLink } from '../RouteLink.tsx';
import { OpenNoticeNote } from '../recalls/OpenNoticeNote.tsx';
import type { BoardBlock, BoardData } from './boardModel.ts';
import type { Carried } from './carryStore.ts';
import { conflictWords, windowWords } from './conflictWords.ts';
import { WhoMayPanel } from './WhoMayPanel.tsx';

export function VisitDetails({
  block,
  data,
  staffId,
  onMove,
  onTakeOff,
  onClose,
}: {
  readonly block: BoardBlock;
  readonly data: BoardData;
  /** In whose row it was chosen. */
  readonly staffId: string;
  readonly onMove: (carried: Carried) => Promise<void>;
  /** true: it is off the board. */
  readonly onTakeOff: (visit: { readonly visitId: string; readonly title: string }, reason: string) => Promise<boolean>;
  readonly onClose: () => void;
}) {
  const { visit, conflicts } = block;
  const nameOf = (visitId: string) =>
    data.visits.find((one) => one.visitId === visitId)?.customerName ?? 'another visit';
  const window = windowWords(wallMinute(visit.plannedFrom), wallMinute(visit.plannedTo));
  return (
    <Panel
      title={visit.customerName}
      action={
        <Button variant="default" onClick={onClose}>
          Close
        </Button>
      }
    >
      <Stack gap="sm">
        {visit.jobs.map(({ jobId, openMakeSafes, openNotices }) => (
          <Fragment key={jobId}>
            <MakeSafeCount count={openMakeSafes} />
            {openNotices.map((notice) => (
              <OpenNoticeNote key={notice.recallId} notice={notice} />
            ))}
          </Fragment>
        ))}
        {conflicts.length === 0 ? null : (
          <ul className="lo-board-conflicts" aria-label="What does not fit">
            {conflicts.map((conflict) => {
              const words = conflictWords(conflict, nameOf);
              return (
                <li key={words} style={{ color: isGrave(conflict) ? 'var(--lo-ember)' : 'var(--lo-ochre)' }}>
                  {capital(words)}.
                </li>
              );
            })}
          </ul>
        )}
        <Facts
          facts={[
            ['What', visit.jobs.map((job) => `${capital(JOB_KIND_WORDS[job.kind])}, ${job.model}`).join(' + ')],
            ['Where', `${visit.street}, ${visit.city}`],
            ['State', VISIT_STATE_WORDS[visit.state]],
            ['Promised', visit.promisedOn === null ? 'nothing yet' : `${dayWords(visit.promisedOn)}, ${window}`],
          ]}
        />
        <RouteLink to="visit" params={{ visitId: visit.visitId }}>
          Open the visit
        </RouteLink>
        {block.isMovable ? (
          <>
            <MoveForm
              key={`${visit.visitId}-${visit.revision}`}
              block={block}
              data={data}
              staffId={staffId}
              onMove={onMove}
            />
            <Fastenings block={block} />
            <WhoMayPanel
              jobIds={visit.jobs.map(({ jobId }) => jobId)}
              on={visit.plannedOn}
              startMin={visit.startMin}
              durationMin={visit.durationMin}
            />
            <AskReason
              label="Cancel the visit …"
              confirmLabel="Cancel the visit"
              onConfirm={(why) => onTakeOff({ visitId: visit.visitId, title: visit.customerName }, why)}
            >
              It leaves the board and its jobs wait beside it. “Undo” brings it back as it was.
            </AskReason>
          </>
        ) : null}
      </Stack>
    </Panel>
  );
}

function MoveForm({
  block,
  data,
  staffId,
  onMove,
}: {
  readonly block: BoardBlock;
  readonly data: BoardData;
  readonly staffId: string;
  readonly onMove: (carried: Carried) => Promise<void>;
}) {
  const { visit } = block;
  const [person, setPerson] = useState(staffId);
  const [day, setDay] = useState(dayWords(visit.plannedOn));
  const [start, setStart] = useState(clockWords(block.startMin));
  const [length, setLength] = useState(durationWords(visit.durationMin));
  const read = { day: readDay(day), start: readTime(start), length: readDuration(length) };
  const startMin = wallMinute(read.start ?? null);
  const on = read.day.ok ? read.day.day : null;
  const isReadable = on !== null && startMin !== null && read.length !== null;
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        if (on === null || startMin === null || read.length === null) return;
        void onMove({
          what: { kind: 'visit', visitId: visit.visitId, fromStaffId: staffId },
          title: visit.customerName,
          durationMin: read.length,
          staffId: person,
          on,
          startMin,
          by: 'keys',
        });
      }}
    >
      <Stack gap="xs">
        <NativeSelect
          label="Who"
          value={person}
          data={data.technicians.map((one) => ({ value: one.staffId, label: one.name }))}
          onChange={(event) => setPerson(event.currentTarget.value)}
        />
        <DayInput label="Day" text={day} error={read.day.ok ? undefined : read.day.why} onText={setDay} />
        <Group gap="xs" grow>
          <TextInput
            label="Start"
            autoComplete="off"
            value={start}
            error={read.start === undefined ? 'Not a time of day.' : undefined}
            onChange={(event) => setStart(event.currentTarget.value)}
          />
          <TextInput
            label="Length"
            autoComplete="off"
            value={length}
            error={read.length === null ? 'Not a length.' : undefined}
            onChange={(event) => setLength(event.currentTarget.value)}
          />
        </Group>
        <Button type="submit" disabled={!isReadable}>
          Move
        </Button>
      </Stack>
    </form>
  );
}

/** What the planner leaves alone, and what the customer was told. */
function Fastenings({ block: { visit } }: { readonly block: BoardBlock }) {
  const pin = useAct('visits.pin');
  const promise = useAct('visits.promise');
  const { visitId, revision: baseRevision, isTechnicianPinned, isDayPinned, isStartPinned } = visit;
  const setPins = (patch: Partial<Record<'isTechnicianPinned' | 'isDayPinned' | 'isStartPinned', boolean>>) =>
    void pin.act({ visitId, baseRevision, isTechnicianPinned, isDayPinned, isStartPinned, ...patch });
  return (
    <Stack gap={0}>
      <Checkbox
        py="xs"
        label={`The customer was told ${dayWords(visit.plannedOn)}`}
        checked={visit.promisedOn === visit.plannedOn}
        onChange={(event) => void promise.act({ visitId, baseRevision, isPromised: event.currentTarget.checked })}
      />
      <Checkbox
        py="xs"
        label="Pin the technician"
        checked={isTechnicianPinned}
        onChange={(event) => setPins({ isTechnicianPinned: event.currentTarget.checked })}
      />
      <Checkbox
        py="xs"
        label="Pin the day"
        checked={isDayPinned}
        onChange={(event) => setPins({ isDayPinned: event.currentTarget.checked })}
      />
      <Checkbox
        py="xs"
        label="Pin the start"
        checked={isStartPinned}
        onChange={(event) => setPins({ isStartPinned: event.currentTarget.checked })}
      />
      <ErrorText error={pin.error} />
      <ErrorText error={promise.error} />
    </Stack>
  );
}
