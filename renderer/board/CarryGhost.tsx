/** What is being carried, drawn where it would be put down, with what would not fit there. */
import { useEffect, useMemo, useRef, useSyncExternalStore } from 'react';
import { type Conflict, planDay, type Stop } from '../../domain/schedule/dayConflicts.ts';
import { wayPlaceOf } from '../../domain/schedule/wayPlace.ts';
import { clockWords, dayWords } from '../kit/dayWords.ts';
import type { BoardHandle } from './boardHandle.ts';
import { type BoardData, baseOf, toStop, travelTimesOf } from './boardModel.ts';
import { HEAD_HEIGHT, NAME_WIDTH, ROW_HEIGHT, xOf } from './boardScale.ts';
import type { Carried, CarryStore } from './carryStore.ts';
import { conflictWords } from './conflictWords.ts';

export function CarryGhost({
  handle,
  data,
  carry,
}: {
  readonly handle: BoardHandle;
  readonly data: BoardData;
  readonly carry: CarryStore;
}) {
  const carried = useSyncExternalStore(carry.subscribe, carry.get);
  if (carried === null) return null;
  return <Ghost handle={handle} data={data} carried={carried} />;
}

function Ghost({
  handle: { rows, scale, scroller },
  data,
  carried,
}: {
  readonly handle: BoardHandle;
  readonly data: BoardData;
  readonly carried: Carried;
}) {
  const element = useRef<HTMLDivElement>(null);
  const rowIndex = rows.findIndex(({ technician }) => technician.staffId === carried.staffId);
  const dayIndex = scale.days.indexOf(carried.on);
  const conflicts = useMemo(() => conflictsThere(data, carried), [data, carried]);
  const left = NAME_WIDTH + xOf(scale, dayIndex, carried.startMin);
  const top = HEAD_HEIGHT + rowIndex * ROW_HEIGHT;
  const width = carried.durationMin * scale.pxPerMin;
  const isByKeys = carried.by === 'keys';

  useEffect(() => {
    if (!isByKeys) return;
    element.current?.focus({ preventScroll: true });
    const frame = scroller.current;
    if (frame === null) return;
    if (top < frame.scrollTop + HEAD_HEIGHT) frame.scrollTop = top - HEAD_HEIGHT;
    else if (top + ROW_HEIGHT > frame.scrollTop + frame.clientHeight)
      frame.scrollTop = top + ROW_HEIGHT - frame.clientHeight;
    if (left < frame.scrollLeft + NAME_WIDTH || left + width > frame.scrollLeft + frame.clientWidth)
      frame.scrollLeft = Math.max(0, left - NAME_WIDTH - 60);
  }, [isByKeys, left, top, width, scroller]);

  const nameOf = (visitId: string) =>
    data.visits.find((visit) => visit.visitId === visitId)?.customerName ?? 'another visit';
  const name = rows[rowIndex]?.technician.name ?? '';
  const time = `${clockWords(carried.startMin)}–${clockWords(Math.min(1439, carried.startMin + carried.durationMin))}`;
  const words = conflicts.map((conflict) => conflictWords(conflict, nameOf));
  return (
    <section
      ref={element}
      className="lo-board-ghost"
      data-tone={conflicts.length === 0 ? 'fits' : 'doubt'}
      style={{ transform: `translate(${left}px, ${top}px)`, minWidth: width }}
      tabIndex={-1}
      aria-label={`Carrying ${carried.title}. Arrow keys move, Enter puts down, Escape leaves it where it was.`}
    >
      <div role="status">
        <strong>
          {time} {name}
        </strong>
        <div>
          {dayWords(carried.on, { weekday: true })}: {carried.title}
        </div>
        {words.map((line) => (
          <div key={line} className="lo-board-ghost-conflict">
            {line}
          </div>
        ))}
      </div>
    </section>
  );
}

/** As if it lay there already, among the other visits of that person's day. */
function conflictsThere(data: BoardData, carried: Carried): readonly Conflict[] {
  const technician = data.technicians.find(({ staffId }) => staffId === carried.staffId);
  const stop = stopOf(data, carried);
  if (technician === undefined || stop === null) return [];
  const others = data.visits.filter(
    (visit) =>
      visit.plannedOn === carried.on &&
      visit.visitId !== stop.visitId &&
      visit.crew.some(({ staffId }) => staffId === carried.staffId),
  );
  const plan = planDay(
    carried.on,
    { worker: technician, base: baseOf(data, technician) },
    [...others.map(toStop), stop],
    travelTimesOf(data),
  );
  return plan.conflicts.get(stop.visitId) ?? [];
}

const CARRIED_JOB = 'carried';

function stopOf(data: BoardData, carried: Carried): Stop | null {
  const { what, on, startMin } = carried;
  if (what.kind === 'visit') {
    const visit = data.visits.find(({ visitId }) => visitId === what.visitId);
    return visit === undefined ? null : { ...toStop(visit), on, startMin };
  }
  const job = data.unplaced.find(({ jobId }) => jobId === what.jobId);
  if (job === undefined) return null;
  return {
    visitId: CARRIED_JOB,
    on,
    startMin,
    durationMin: carried.durationMin,
    place: wayPlaceOf(job),
    isAhead: true,
    // Booked with open readiness it would be pencilled in, never firm.
    isPencilled: true,
    promisedFromMin: null,
    promisedToMin: null,
    promisedOn: null,
    jobs: [job],
  };
}
