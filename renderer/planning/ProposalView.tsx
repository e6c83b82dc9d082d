/** One proposal while it is searched for and after: how good it is, what it moves and why, what it leaves out and why. */
import { Button, Group, Progress, Stack } from '@mantine/core';
import { useState } from 'react';
import type { OutputOf } from '../../electron/contract/index.ts';
import type { LeftOut, PlanGoals, ProposedMove } from '../../electron/contract/planning.ts';
import { obstacleWords } from '../board/conflictWords.ts';
import { shortageWords } from '../board/shortageWords.ts';
import { durationWords } from '../form/readTime.ts';
import { Answer } from '../kit/Answer.tsx';
import { capital } from '../kit/capital.ts';
import { clockWords, dayWords } from '../kit/dayWords.ts';
import { EmptyState } from '../kit/EmptyState.tsx';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Facts } from '../kit/Facts.tsx';
import { LedTo } from '../kit/LedTo.tsx';
import { MakeSafeCount } from '../kit/MakeSafeCount.tsx';
import { Note } from '../kit/Note.tsx';
import { Panel } from '../kit/Panel.tsx';
import { PlainTable } from '../kit/PlainTable.tsx';
import { JOB_KIND_WORDS } from '../kit/tradeWords.ts';
import { useAct } from '../operations/useAct.ts';
import { useOperation } from '../operations/useOperation.ts';
import { RouteLink } from '../RouteLink.tsx';
import { GROUND_WORDS } from './groundWords.ts';
import { leftOutWords } from './leftOutWords.ts';

type Proposal = OutputOf<'planning.status'>;

const STATE_WORDS: Record<Proposal['state'], string> = {
  running: 'Searching',
  done: 'Done',
  stopped: 'Stopped: what was found so far can be accepted',
  failed: 'The search failed; nothing was changed',
};

export function ProposalView({ proposalId, onGone }: { readonly proposalId: string; readonly onGone: () => void }) {
  const found = useOperation('planning.status', { proposalId });
  const cancel = useAct('planning.cancel');
  const accept = useAct('planning.accept');
  const [accepted, setAccepted] = useState<Accepted | null>(null);
  if (accepted !== null) return <AcceptedNote accepted={accepted} onGone={onGone} />;
  const take = async (from: string) => {
    const reply = await accept.act({ proposalId });
    if (reply.ok) setAccepted({ ...reply.value, proposalId, from });
  };
  return (
    <Answer of={found}>
      {(proposal) => (
        <>
          <Panel
            title={`Proposal for ${dayWords(proposal.from)} to ${dayWords(proposal.to)}`}
            action={
              proposal.state === 'running' ? (
                <Button variant="default" loading={cancel.isBusy} onClick={() => void cancel.act({ proposalId })}>
                  Stop searching
                </Button>
              ) : (
                <Group gap="sm">
                  <Button variant="default" onClick={onGone}>
                    Leave it
                  </Button>
                  <Button
                    loading={accept.isBusy}
                    disabled={proposal.goals === null || proposal.moves.length === 0}
                    onClick={() => void take(proposal.from)}
                  >
                    Accept all of it
                  </Button>
                </Group>
              )
            }
          >
            <Stack gap="sm">
              <SearchState proposal={proposal} />
              <ErrorText error={accept.error ?? cancel.error} />
              {proposal.goals === null ? null : <Goals goals={proposal.goals} proposal={proposal} />}
              {proposal.assumedWays.placeCount === 0 ? null : (
                <Note tone="caution">
                  {counted(proposal.assumedWays.placeCount, 'place')} without a spot on the map: each way there is taken
                  as {durationWords(proposal.assumedWays.minutes)}.
                </Note>
              )}
              <Shortages proposal={proposal} />
            </Stack>
          </Panel>
          <Panel title={`What it changes (${proposal.moves.length})`}>
            <Moves proposal={proposal} />
          </Panel>
          <LeftOutPanels rows={proposal.leftOut} />
        </>
      )}
    </Answer>
  );
}

type Accepted = {
  readonly proposalId: string;
  readonly from: string;
  readonly moved: number;
  readonly booked: number;
};

function AcceptedNote({ accepted, onGone }: { readonly accepted: Accepted; readonly onGone: () => void }) {
  const takeBack = useAct('planning.takeBack');
  const [isTakenBack, setIsTakenBack] = useState(false);
  const { proposalId, from, booked, moved } = accepted;
  const undo = async () => {
    const reply = await takeBack.act({ proposalId });
    if (reply.ok) setIsTakenBack(true);
  };
  return (
    <LedTo key={String(isTakenBack)}>
      <Note
        tone="fir"
        isSpoken
        action={
          <Group gap="sm">
            {isTakenBack ? null : (
              <Button variant="default" loading={takeBack.isBusy} onClick={() => void undo()}>
                Take it back
              </Button>
            )}
            <Button variant="default" onClick={onGone}>
              Plan again
            </Button>
          </Group>
        }
      >
        {isTakenBack
          ? 'Taken back: everything is where it was before. '
          : `Accepted: ${counted(booked, 'visit')} booked, ${moved} moved. `}
        <RouteLink to="board" params={{ day: from }} className="lo-link-inline">
          See the board
        </RouteLink>
        <ErrorText error={takeBack.error} />
      </Note>
    </LedTo>
  );
}

function SearchState({ proposal }: { readonly proposal: Proposal }) {
  const isRunning = proposal.state === 'running';
  const share = Math.min(100, (100 * proposal.elapsedMs) / (proposal.seconds * 1000));
  return (
    <div>
      <p role="status" style={{ margin: 0 }}>
        {STATE_WORDS[proposal.state]}
        {isRunning ? `, ${Math.floor(proposal.elapsedMs / 1000)} of ${proposal.seconds} s` : ''}
      </p>
      {isRunning ? <Progress aria-label="Time searched" value={share} /> : null}
    </div>
  );
}

/** The goals in the order in which they count; one number each, never a mixed score. */
function Goals({ goals, proposal }: { readonly goals: PlanGoals; readonly proposal: Proposal }) {
  const notReady = proposal.leftOut.filter(({ reasons }) => reasons.some(({ code }) => code === 'not-ready')).length;
  return (
    <Facts
      facts={[
        ['Placed', counted(proposal.placedCount, 'visit')],
        [
          '1. Without a fitting place',
          `${counted(goals.leftOut, 'visit')}${notReady === 0 ? '' : `, and ${notReady} not tried: the site is not ready`}`,
        ],
        [
          '2. Past a latest day, all visits together',
          `${counted(goals.daysLate, 'day')} late, ${counted(goals.daysClose, 'day')} too close`,
        ],
        ['3. Outside the due window, all visits together', counted(goals.daysOutside, 'day')],
        ['4. Promises moved', String(goals.promisesMoved)],
        ['5. Courses or instruments in date lacking', String(goals.wishesLacking)],
        ['6. Travel', durationWords(goals.travelMin)],
        ['7. Overtime and waiting', durationWords(goals.overtimeAndIdleMin)],
        ['8. Busiest ahead of least busy', durationWords(goals.imbalanceMin)],
      ]}
    />
  );
}

function Shortages({ proposal: { shortages, staff } }: { readonly proposal: Proposal }) {
  if (shortages.length === 0) return null;
  const names = new Map(staff.map(({ staffId, name }) => [staffId, name]));
  return (
    <Note tone="caution">
      {shortages.map((one) => shortageWords(one, (staffId) => names.get(staffId) ?? '')).join('; ')}. Hand it on, or
      move one of the visits.
    </Note>
  );
}

function Moves({ proposal }: { readonly proposal: Proposal }) {
  const names = new Map(proposal.staff.map(({ staffId, name }) => [staffId, name]));
  if (proposal.moves.length === 0) {
    return (
      <EmptyState title={proposal.state === 'running' ? 'Nothing found yet' : 'Nothing to change'}>
        Jobs that wait and visits that would move stand here with their new time and the reason for it.
      </EmptyState>
    );
  }
  return (
    <PlainTable<ProposedMove>
      caption="What the proposal changes"
      rows={proposal.moves}
      keyOf={({ ref, part }) => `${ref.kind} ${ref.id} ${part?.number ?? ''}`}
      columns={[
        {
          label: 'Who',
          cell: ({ ref, part, customerName, jobKinds, openMakeSafes }) => (
            <>
              {ref.kind === 'visit' ? (
                <RouteLink to="visit" params={{ visitId: ref.id }}>
                  {customerName}
                </RouteLink>
              ) : (
                <RouteLink to="job" params={{ jobId: ref.id }}>
                  {customerName}
                </RouteLink>
              )}
              <div className="lo-faint">
                {capital(jobKinds.map((kind) => JOB_KIND_WORDS[kind]).join(' + '))}
                {part === null ? '' : `, day ${part.number} of ${part.of}`}
              </div>
              <MakeSafeCount count={openMakeSafes} />
            </>
          ),
        },
        { label: 'Where', cell: ({ street, city }) => `${street}, ${city}` },
        {
          label: 'From',
          cell: ({ from }) =>
            from === null
              ? 'waiting'
              : `${dayWords(from.date)}${from.startMin === undefined ? '' : ` ${clockWords(from.startMin)}`}, ${names.get(from.staffId) ?? ''}`,
        },
        {
          label: 'To',
          cell: ({ to, part, durationMin }) => (
            <b>
              {dayWords(to.date, { weekday: true })} {clockWords(to.startMin)}, {names.get(to.staffId) ?? ''}
              {part === null ? '' : `, ${durationWords(durationMin)}`}
            </b>
          ),
        },
        {
          label: 'Why there',
          cell: ({ ground, extraTravelMin, movesPromise, toWeigh }) => (
            <>
              {toWeigh.length === 0 ? null : <b>{capital(toWeigh.map(obstacleWords).join('; '))}. </b>}
              {movesPromise ? <b>Moves a promise; call first. </b> : null}
              {ground === null ? '' : capital(GROUND_WORDS[ground])}
              {extraTravelMin === null ? '' : `; ${extraTravelMin} min of travel for it`}
            </>
          ),
        },
      ]}
    />
  );
}

/** Waiting work without a place, and apart from it what has a place already that does not fit: it is not unbooked. */
function LeftOutPanels({ rows }: { readonly rows: readonly LeftOut[] }) {
  const waiting = rows.filter(({ ref }) => ref.kind === 'job');
  const booked = rows.filter(({ ref }) => ref.kind === 'visit');
  return (
    <>
      {waiting.length === 0 ? null : (
        <Panel title={`Left waiting (${waiting.length})`}>
          <LeftOutTable caption="Left waiting, and why" rows={waiting} />
        </Panel>
      )}
      {booked.length === 0 ? null : (
        <Panel title={`Booked, but does not fit (${booked.length})`}>
          <p className="lo-faint" style={{ marginBlockStart: 0 }}>
            These stay as they are booked, whether the plan is accepted or not; each needs a look on the board.
          </p>
          <LeftOutTable caption="Booked, but does not fit, and why" rows={booked} areBooked />
        </Panel>
      )}
    </>
  );
}

function LeftOutTable({
  caption,
  rows,
  areBooked = false,
}: {
  readonly caption: string;
  readonly rows: readonly LeftOut[];
  readonly areBooked?: boolean;
}) {
  return (
    <PlainTable<LeftOut>
      caption={caption}
      rows={rows}
      keyOf={({ ref }) => `${ref.kind} ${ref.id}`}
      columns={[
        {
          label: 'Who',
          cell: ({ ref, customerName }) =>
            ref.kind === 'visit' ? (
              <RouteLink to="visit" params={{ visitId: ref.id }}>
                {customerName}
              </RouteLink>
            ) : (
              <RouteLink to="job" params={{ jobId: ref.id }}>
                {customerName}
              </RouteLink>
            ),
        },
        { label: 'Where', cell: ({ street, city }) => `${street}, ${city}` },
        ...(areBooked ? [{ label: 'Booked for', cell: bookedWords }] : []),
        { label: 'Time on site', cell: ({ durationMin }) => durationWords(durationMin) },
        { label: 'Why', cell: ({ reasons }) => reasons.map(leftOutWords).join('; ') },
      ]}
    />
  );
}

function bookedWords({ booked }: LeftOut): string {
  if (booked === null) return '';
  const day = dayWords(booked.date, { weekday: true });
  return booked.startMin === null ? day : `${day} ${clockWords(booked.startMin)}`;
}

function counted(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? '' : 's'}`;
}
