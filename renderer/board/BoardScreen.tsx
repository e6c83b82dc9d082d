/** The dispatcher's board: a day or a week of everybody's visits, the work that waits beside it, and undo. */
import { Button, Group, SegmentedControl } from '@mantine/core';
import { type RefObject, useCallback, useEffect, useLayoutEffect, useMemo, useRef, useState } from 'react';
import { Temporal } from 'temporal-polyfill';
import { Answer } from '../kit/Answer.tsx';
import { dayWords } from '../kit/dayWords.ts';
import { EmptyState } from '../kit/EmptyState.tsx';
import { ErrorText } from '../kit/ErrorText.tsx';
import { Screen } from '../kit/Screen.tsx';
import { useKept } from '../kit/useKept.ts';
import { useAppStatus } from '../operations/AppStatus.tsx';
import { useOperation } from '../operations/useOperation.ts';
import { RouteLink } from '../RouteLink.tsx';
import { goTo } from '../route.ts';
import { useShortcut } from '../shortcuts/Shortcuts.tsx';
import { addDays, isDay, weekOf } from '../visits/week.ts';
import type { BoardHandle } from './boardHandle.ts';
import { type BoardData, toRows } from './boardModel.ts';
import { type BoardView, NAME_WIDTH, toScale } from './boardScale.ts';
import { ConflictList } from './ConflictList.tsx';
import { findFirstFit } from './carriedConflicts.ts';
import { type Carried, createCarryStore } from './carryStore.ts';
import { DispatchBoard } from './DispatchBoard.tsx';
import { WeekMap } from './map/WeekMap.tsx';
import { type BoardSpot, firstSpot, hasSpot } from './neighbour.ts';
import { OutputsBar } from './OutputsBar.tsx';
import { ShortageLine } from './ShortageLine.tsx';
import { UnplacedList } from './UnplacedList.tsx';
import { useBoardActs } from './useBoardActs.ts';
import { usePointerCarry } from './usePointerCarry.ts';
import { VisitDetails } from './VisitDetails.tsx';

export function BoardScreen({ day: wanted }: { readonly day: string | null }) {
  const { today } = useAppStatus();
  const [kept, setKept] = useKept('board.view', 'week');
  const isMap = kept === 'map';
  const view: BoardView = kept === 'day' || kept === 'hours' ? kept : 'week';
  const day = wanted !== null && isDay(wanted) ? wanted : today;
  const week = useMemo(() => weekOf(day), [day]);
  const asked = useMemo(() => (view === 'day' ? [day] : week), [view, day, week]);
  const [from = day, to = day] = [asked[0], asked.at(-1)];
  const board = useOperation('board.get', { from, to });
  const step = view === 'day' ? 1 : 7;
  // A week turned to is looked at from its beginning.
  const turn = (days: number) => goTo('board', { day: addDays(from, days) });
  useShortcut('[', view === 'day' ? 'Day before' : 'Week before', () => turn(-step));
  useShortcut(']', view === 'day' ? 'Day after' : 'Week after', () => turn(step));
  return (
    <Screen
      title={view === 'day' ? dayWords(day, { weekday: true }) : `Week of ${dayWords(from)}`}
      action={
        <Group gap="sm" align="end">
          <SegmentedControl
            aria-label="What the board shows"
            value={isMap ? 'map' : view}
            data={[
              { value: 'day', label: 'Day' },
              { value: 'week', label: 'Week' },
              { value: 'hours', label: 'Week by hours' },
              { value: 'map', label: 'Map' },
            ]}
            onChange={setKept}
          />
          <Button variant="default" onClick={() => turn(-step)}>
            {view === 'day' ? 'Day before' : 'Week before'}
          </Button>
          <Button variant="default" onClick={() => goTo('board', { day: today })}>
            Today
          </Button>
          <Button variant="default" onClick={() => turn(step)}>
            {view === 'day' ? 'Day after' : 'Week after'}
          </Button>
        </Group>
      }
    >
      <Answer of={board}>
        {(data) =>
          isMap ? (
            <WeekMap key={from} data={data} days={daysOf(data, asked)} day={day} />
          ) : (
            <Board data={data} asked={asked} view={view} day={day} />
          )
        }
      </Answer>
    </Screen>
  );
}

function Board({
  data,
  asked,
  view,
  day,
}: {
  readonly data: BoardData;
  readonly asked: readonly string[];
  readonly view: BoardView;
  /** The day that was asked for, which of a week is to be in sight. */
  readonly day: string;
}) {
  const { today } = useAppStatus();
  const rows = useMemo(() => withoutIdleWeekend(data, asked), [data, asked]);
  const days = useMemo(() => rows[0]?.days.map(({ on }) => on) ?? asked, [rows, asked]);
  const scroller = useRef<HTMLDivElement>(null);
  const roomPx = useRoom(scroller);
  const scale = useMemo(() => toScale(rows, days, view, roomPx), [rows, days, view, roomPx]);
  const handle = useMemo<BoardHandle>(() => ({ scroller, rows, scale }), [rows, scale]);
  const dayLeft = Math.max(0, days.indexOf(day)) * scale.dayWidth;
  useEffect(() => {
    if (scroller.current !== null) scroller.current.scrollLeft = dayLeft;
  }, [dayLeft]);
  const [carry] = useState(createCarryStore);
  const acts = useBoardActs();
  const [chosen, setChosen] = useState<BoardSpot | null>(null);
  const [wanted, setWanted] = useState<BoardSpot | null>(null);
  const active = wanted !== null && hasSpot(rows, wanted) ? wanted : firstSpot(rows);

  const { drop } = acts;
  const onDrop = useCallback(
    async (carried: Carried) => {
      carry.set(null);
      const visitId = await drop(data, carried);
      if (visitId !== null) setWanted({ staffId: carried.staffId, visitId });
      else if (carried.what.kind === 'visit')
        setWanted({ staffId: carried.what.fromStaffId, visitId: carried.what.visitId });
      // Details that were closed while it was being saved stay closed.
      if (visitId !== null)
        setChosen((before) => (before?.visitId === visitId ? { staffId: carried.staffId, visitId } : before));
    },
    [carry, drop, data],
  );
  const onCancel = ({ what }: Carried) => {
    carry.set(null);
    if (what.kind === 'visit') setWanted({ staffId: what.fromStaffId, visitId: what.visitId });
    else document.querySelector<HTMLElement>(`[data-job="${what.jobId}"]`)?.focus();
  };
  const pointer = usePointerCarry(handle, carry, (carried) => void onDrop(carried));
  useShortcut('u', 'Take back the last move', () => void acts.undo());

  const startOf = (job: BoardData['unplaced'][number]): Omit<Carried, 'by'> | null => {
    const row = rows[0];
    if (row === undefined) return null;
    const on = days.find((one) => one >= today) ?? days[0] ?? '';
    const spans = row.days.find((one) => one.on === on)?.spans;
    return {
      what: { kind: 'job', jobId: job.jobId },
      title: job.customerName,
      durationMin: job.suggestedMin,
      staffId: row.technician.staffId,
      on,
      startMin: spans?.[0]?.fromMin ?? scale.fromMin,
    };
  };
  // By keys it begins where everything fits: often Enter is all that is left to do.
  const pickUp = (job: BoardData['unplaced'][number]) => {
    const start = startOf(job);
    if (start === null) return;
    const fit = findFirstFit(data, days, job, { on: today, minute: minuteOfToday(today) });
    carry.set({ ...start, ...fit, by: 'keys' });
  };
  useShortcut('w', 'To the work without a day', () =>
    document.querySelector<HTMLElement>('.lo-board-waiting button')?.focus(),
  );
  useShortcut('b', 'To the board', () =>
    scroller.current?.querySelector<HTMLElement>('.lo-board-visit[tabindex="0"]')?.focus(),
  );
  const chosenBlock = rows
    .find(({ technician }) => technician.staffId === chosen?.staffId)
    ?.days.flatMap((day) => day.blocks)
    .find(({ visit }) => visit.visitId === chosen?.visitId);

  if (rows.length === 0) {
    return (
      <EmptyState title="Nobody to send yet">
        Technicians and helpers get a row here. Add them with their hours and base under{' '}
        <RouteLink to="people" params={{}} className="lo-link-inline">
          People
        </RouteLink>
        .
      </EmptyState>
    );
  }
  return (
    <div className="lo-board-screen">
      <div className="lo-board-main">
        <Group justify="space-between" gap="sm">
          <ConflictList
            rows={rows}
            data={data}
            onGo={(spot) => {
              setWanted(spot);
              setChosen(spot);
            }}
          />
          <Group gap="sm">
            <span role="status" className="lo-faint">
              {acts.said}
            </span>
            <Button variant="default" disabled={acts.undoLabel === null} onClick={() => void acts.undo()}>
              Undo
            </Button>
            <OutputsBar rows={rows} days={days} today={today} />
          </Group>
        </Group>
        <ShortageLine data={data} />
        <ErrorText error={acts.error} />
        <DispatchBoard
          handle={handle}
          data={data}
          carry={carry}
          pointer={pointer}
          active={active}
          wanted={wanted}
          selectedId={chosen?.visitId ?? null}
          onActive={setWanted}
          onSelect={(spot) => setChosen((before) => (before?.visitId === spot.visitId ? null : spot))}
          onDrop={(carried) => void onDrop(carried)}
          onCancel={onCancel}
        />
        <p className="lo-faint" style={{ margin: 0 }}>
          Arrow keys go from visit to visit; Space picks one up, arrows move it (Page Up and Page Down by a day), Enter
          puts it down. W leads to the work without a day, B back to the board, U takes back.
        </p>
      </div>
      <aside className="lo-board-aside" aria-label="Beside the board">
        {chosen === null || chosenBlock === undefined ? null : (
          <VisitDetails
            block={chosenBlock}
            data={data}
            staffId={chosen.staffId}
            onMove={onDrop}
            onTakeOff={acts.takeOff}
            onClose={() => {
              setWanted({ ...chosen });
              setChosen(null);
            }}
          />
        )}
        <UnplacedList jobs={data.unplaced} pointer={pointer} startOf={startOf} onPickUp={pickUp} />
      </aside>
    </div>
  );
}

/** Minutes since midnight; 0 where this computer's calendar shows another day than the firm's. */
function minuteOfToday(today: string): number {
  const now = Temporal.Now.plainDateTimeISO();
  return now.toPlainDate().toString() === today ? now.hour * 60 + now.minute : 0;
}

/** How wide the days together may be without scrolling; null until it is known. */
function useRoom(scroller: RefObject<HTMLDivElement | null>): number | null {
  const [roomPx, setRoomPx] = useState<number | null>(null);
  // Before the first paint, so that nothing is drawn in another scale first.
  useLayoutEffect(() => {
    const element = scroller.current;
    if (element === null) return;
    const measure = () => setRoomPx(element.clientWidth - NAME_WIDTH);
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, [scroller]);
  return roomPx;
}

/** As on the board: without people to send, all of them. */
function daysOf(data: BoardData, asked: readonly string[]): readonly string[] {
  return withoutIdleWeekend(data, asked)[0]?.days.map(({ on }) => on) ?? asked;
}

/** Saturday and Sunday are there when somebody works or something is booked. */
function withoutIdleWeekend(data: BoardData, asked: readonly string[]): ReturnType<typeof toRows> {
  const rows = toRows(data, asked);
  const workdays = 5;
  const used = asked.filter(
    (_on, index) =>
      index < workdays ||
      rows.some((row) => (row.days[index]?.spans.length ?? 0) > 0 || (row.days[index]?.blocks.length ?? 0) > 0),
  );
  return used.length === asked.length
    ? rows
    : rows.map((row) => ({ ...row, days: row.days.filter(({ on }) => used.includes(on)) }));
}
