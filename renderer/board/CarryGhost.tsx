/** What is being carried, drawn where it would be put down, with what would not fit there. */
import { useEffect, useMemo, useRef } from 'react';
import { clockWords, dayWords } from '../kit/dayWords.ts';
import { useSharedValue } from '../kit/sharedValue.ts';
import type { BoardHandle } from './boardHandle.ts';
import type { BoardData } from './boardModel.ts';
import { HEAD_HEIGHT, NAME_WIDTH, ROW_HEIGHT, xOf } from './boardScale.ts';
import { carriedConflicts } from './carriedConflicts.ts';
import type { Carried, CarryStore } from './carryStore.ts';
import { conflictWords } from './conflictWords.ts';

/** Enough for a sentence of what does not fit. */
const WIDEST_PX = 352;

export function CarryGhost({
  handle,
  data,
  carry,
}: {
  readonly handle: BoardHandle;
  readonly data: BoardData;
  readonly carry: CarryStore;
}) {
  const carried = useSharedValue(carry);
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
  const conflicts = useMemo(() => carriedConflicts(data, carried), [data, carried]);
  const left = NAME_WIDTH + xOf(scale, dayIndex, carried.startMin);
  const top = HEAD_HEIGHT + rowIndex * ROW_HEIGHT;
  const width = carried.durationMin * scale.pxPerMin;
  const isByKeys = carried.by === 'keys';
  // Towards the end it grows to the left: what it says must not lie beyond the edge.
  const isAtEnd = left + WIDEST_PX > NAME_WIDTH + scale.days.length * scale.dayWidth;
  // In a week seen at once the words are wider than the place itself: they go beside its row, and the place is marked.
  const isLast = rowIndex === rows.length - 1 && rows.length > 1;
  const besideRow = !scale.isCompact ? '' : isLast ? ' translateY(-100%)' : ` translateY(${ROW_HEIGHT}px)`;
  const place = isAtEnd
    ? `translate(${left + width}px, ${top}px) translateX(-100%)${besideRow}`
    : `translate(${left}px, ${top}px)${besideRow}`;

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
    <>
      {scale.isCompact ? (
        <div
          className="lo-board-target"
          style={{ transform: `translate(${left}px, ${top}px)`, width, height: ROW_HEIGHT }}
        />
      ) : null}
      <section
        ref={element}
        className="lo-board-ghost"
        data-tone={conflicts.length === 0 ? 'fits' : 'doubt'}
        style={{ transform: place, minWidth: width, maxWidth: WIDEST_PX }}
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
    </>
  );
}
