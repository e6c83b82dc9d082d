/**
 * The board itself: people as rows, hours as columns, one day or several side by side. Only the rows and days in sight are in
 * the page, so that sixty people with two thousand visits scroll like ten. What a visit means for the store is the caller's.
 */

import { useVirtualizer } from '@tanstack/react-virtual';
import { type KeyboardEvent, useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { START_GRAIN_MIN } from '../../domain/schedule/startGrain.ts';
import { dayWords, shortDayWords } from '../kit/dayWords.ts';
import { useAppStatus } from '../operations/AppStatus.tsx';
import { BoardRow } from './BoardRow.tsx';
import type { BoardHandle } from './boardHandle.ts';
import type { BoardData } from './boardModel.ts';
import { type BoardScale, HEAD_HEIGHT, NAME_WIDTH, ROW_HEIGHT, snap } from './boardScale.ts';
import { CarryGhost } from './CarryGhost.tsx';
import type { Carried, CarryStore } from './carryStore.ts';
import { type BoardSpot, findNeighbour } from './neighbour.ts';
import type { PointerCarry } from './usePointerCarry.ts';
import './board.css';

export function DispatchBoard({
  handle,
  data,
  carry,
  pointer,
  active,
  wanted,
  selectedId,
  onActive,
  onSelect,
  onDrop,
  onCancel,
}: {
  readonly handle: BoardHandle;
  readonly data: BoardData;
  readonly carry: CarryStore;
  readonly pointer: PointerCarry;
  /** The one tab stop. */
  readonly active: BoardSpot | null;
  /** Where the keyboard is to go; another object leads it there again. */
  readonly wanted: BoardSpot | null;
  readonly selectedId: string | null;
  readonly onActive: (spot: BoardSpot | null) => void;
  readonly onSelect: (spot: BoardSpot) => void;
  readonly onDrop: (carried: Carried) => void;
  readonly onCancel: (carried: Carried) => void;
}) {
  const { scroller, rows, scale } = handle;
  const virtual = useVirtualizer({
    count: rows.length,
    getScrollElement: () => scroller.current,
    estimateSize: () => ROW_HEIGHT,
    overscan: 2,
    // Rows may come a moment after the scroll: holding the scroll up for them costs frames.
    useFlushSync: false,
    scrollPaddingStart: HEAD_HEIGHT,
  });
  const sight = useDaysInSight(handle);
  const scrollToRow = useCallback((index: number) => virtual.scrollToIndex(index), [virtual]);
  useLeadFocus(handle, wanted, scrollToRow);

  const onKeyDown = (event: KeyboardEvent) => {
    const carried = carry.get();
    if (carried !== null) {
      const moved = moveByKey(event, carried, handle);
      if (moved === null) return;
      event.preventDefault();
      event.stopPropagation();
      if (moved === 'drop') onDrop(carried);
      else if (moved === 'cancel') onCancel(carried);
      else carry.set(moved);
      return;
    }
    if (active === null) return;
    const next = findNeighbour(rows, active, event.key);
    if (next !== null) {
      event.preventDefault();
      onActive(next);
      return;
    }
    if (event.key === ' ' || event.key === 'm') {
      const row = rows.find(({ technician }) => technician.staffId === active.staffId);
      const block = row?.days.flatMap((day) => day.blocks).find(({ visit }) => visit.visitId === active.visitId);
      if (block === undefined) return;
      event.preventDefault();
      event.stopPropagation();
      if (!block.isMovable) return;
      carry.set({
        what: { kind: 'visit', visitId: block.visit.visitId, fromStaffId: active.staffId },
        title: block.visit.customerName,
        durationMin: block.visit.durationMin,
        staffId: active.staffId,
        on: block.visit.plannedOn,
        startMin: block.startMin,
        by: 'keys',
      });
    }
  };
  const width = NAME_WIDTH + scale.days.length * scale.dayWidth;
  return (
    <section
      ref={scroller}
      className="lo-board"
      aria-label="Board"
      data-compact={scale.isCompact}
      onKeyDown={onKeyDown}
    >
      <div style={{ width, height: HEAD_HEIGHT + virtual.getTotalSize(), position: 'relative' }}>
        <BoardHead scale={scale} width={width} />
        {virtual.getVirtualItems().map((item) => {
          const row = rows[item.index];
          if (row === undefined) return null;
          const isActiveHere = active?.staffId === row.technician.staffId;
          return (
            <BoardRow
              key={row.technician.staffId}
              row={row}
              scale={scale}
              top={HEAD_HEIGHT + item.start}
              firstDay={sight.first}
              lastDay={sight.last}
              activeVisitId={isActiveHere ? (active?.visitId ?? null) : null}
              selectedId={selectedId}
              pointer={pointer}
              onActive={onActive}
              onSelect={onSelect}
            />
          );
        })}
        <CarryGhost handle={handle} data={data} carry={carry} />
      </div>
    </section>
  );
}

function BoardHead({ scale, width }: { readonly scale: BoardScale; readonly width: number }) {
  const { today } = useAppStatus();
  const hours = useMemo(() => {
    const list: number[] = [];
    for (let minute = scale.fromMin; minute < scale.toMin; minute += scale.gridMin) list.push(minute / 60);
    return list;
  }, [scale]);
  return (
    <div className="lo-board-head" style={{ width, height: HEAD_HEIGHT }} aria-hidden="true">
      <div className="lo-board-corner" style={{ width: NAME_WIDTH }} />
      {scale.days.map((on) => (
        <div key={on} className="lo-board-day-head" data-today={on === today} style={{ width: scale.dayWidth }}>
          <div className="lo-board-day-name">
            {scale.isCompact ? shortDayWords(on) : dayWords(on, { weekday: true })}
          </div>
          {hours.map((hour) => (
            <span
              key={hour}
              className="lo-board-hour"
              style={{ insetInlineStart: (hour * 60 - scale.fromMin) * scale.pxPerMin }}
            >
              {hour}
            </span>
          ))}
        </div>
      ))}
    </div>
  );
}

/** Days outside the window are not drawn: first and last index that are. */
function useDaysInSight({ scroller, scale }: BoardHandle): { readonly first: number; readonly last: number } {
  const [sight, setSight] = useState({ first: 0, last: scale.days.length - 1 });
  const look = useCallback(() => {
    const element = scroller.current;
    if (element === null) return;
    const first = Math.max(0, Math.floor(element.scrollLeft / scale.dayWidth));
    const last = Math.min(
      scale.days.length - 1,
      Math.floor((element.scrollLeft + element.clientWidth - NAME_WIDTH) / scale.dayWidth),
    );
    setSight((before) => (before.first === first && before.last === last ? before : { first, last }));
  }, [scroller, scale]);
  useEffect(() => {
    const element = scroller.current;
    if (element === null) return;
    look();
    element.addEventListener('scroll', look, { passive: true });
    const observer = new ResizeObserver(look);
    observer.observe(element);
    return () => {
      element.removeEventListener('scroll', look);
      observer.disconnect();
    };
  }, [scroller, look]);
  return sight;
}

/**
 * The keyboard goes where it is wanted as soon as that visit is in the page, and follows the visit it was on when another
 * answer of the core draws it somewhere else.
 */
function useLeadFocus(
  { scroller, rows, scale }: BoardHandle,
  wanted: BoardSpot | null,
  scrollToRow: (index: number) => void,
): void {
  const led = useRef<BoardSpot | null>(null);
  const wasOnVisit = useRef(false);
  useEffect(() => {
    const onFocusIn = (event: FocusEvent) => {
      wasOnVisit.current = event.target instanceof HTMLElement && event.target.dataset['visit'] !== undefined;
    };
    const onFocusOut = ({ target }: FocusEvent) => {
      // A button that was taken out of the page still counts: its visit is drawn elsewhere.
      queueMicrotask(() => {
        if (target instanceof HTMLElement && target.isConnected && document.activeElement === document.body)
          wasOnVisit.current = false;
      });
    };
    document.addEventListener('focusin', onFocusIn);
    document.addEventListener('focusout', onFocusOut);
    return () => {
      document.removeEventListener('focusin', onFocusIn);
      document.removeEventListener('focusout', onFocusOut);
    };
  }, []);
  useEffect(() => {
    if (wanted === null) return;
    const isLost = wasOnVisit.current && document.activeElement === document.body;
    if (led.current === wanted && !isLost) return;
    const element = scroller.current;
    const index = rows.findIndex(({ technician }) => technician.staffId === wanted.staffId);
    const dayIndex = rows[index]?.days.findIndex((day) =>
      day.blocks.some(({ visit }) => visit.visitId === wanted.visitId),
    );
    // Not there yet: it was only just booked, and the next answer of the core will bring it.
    if (element === null || index < 0 || dayIndex === undefined || dayIndex < 0) return;
    led.current = wanted;
    scrollToRow(index);
    const left = dayIndex * scale.dayWidth;
    if (left < element.scrollLeft || left + scale.dayWidth > element.scrollLeft + element.clientWidth - NAME_WIDTH) {
      const block = rows[index]?.days[dayIndex]?.blocks.find(({ visit }) => visit.visitId === wanted.visitId);
      const x = left + ((block?.startMin ?? scale.fromMin) - scale.fromMin) * scale.pxPerMin;
      if (x < element.scrollLeft || x + 120 > element.scrollLeft + element.clientWidth - NAME_WIDTH)
        element.scrollLeft = Math.max(0, x - 60);
    }
    const focus = (triesLeft: number) => {
      const block = element.querySelector<HTMLElement>(
        `[data-visit="${wanted.visitId}"][data-staff="${wanted.staffId}"]`,
      );
      if (block !== null) block.focus({ preventScroll: true });
      else if (triesLeft > 0) requestAnimationFrame(() => focus(triesLeft - 1));
    };
    focus(10);
  }, [wanted, rows, scale, scroller, scrollToRow]);
}

/** null: the key means nothing to a carried visit. */
function moveByKey(
  event: KeyboardEvent,
  carried: Carried,
  { rows, scale }: BoardHandle,
): Carried | 'drop' | 'cancel' | null {
  const step = (event.shiftKey ? 4 : 1) * START_GRAIN_MIN;
  const rowIndex = rows.findIndex(({ technician }) => technician.staffId === carried.staffId);
  const dayIndex = scale.days.indexOf(carried.on);
  const toRow = (index: number) => ({ ...carried, staffId: rows[index]?.technician.staffId ?? carried.staffId });
  const toDay = (index: number) => ({ ...carried, on: scale.days[index] ?? carried.on });
  switch (event.key) {
    case 'ArrowLeft':
      return { ...carried, startMin: snap(carried.startMin - step, scale) };
    case 'ArrowRight':
      return { ...carried, startMin: snap(carried.startMin + step, scale) };
    case 'ArrowUp':
      return toRow(rowIndex - 1);
    case 'ArrowDown':
      return toRow(rowIndex + 1);
    case 'PageUp':
      return toDay(dayIndex - 1);
    case 'PageDown':
      return toDay(dayIndex + 1);
    case 'Enter':
    case ' ':
      return 'drop';
    case 'Escape':
      return 'cancel';
    default:
      return null;
  }
}
