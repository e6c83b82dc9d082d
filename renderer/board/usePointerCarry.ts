/** Carrying with the mouse or a finger: begins after a few pixels, follows over rows and days, scrolls at the edges. */
import { type PointerEvent as ReactPointerEvent, useEffect, useMemo, useRef } from 'react';
import { START_GRAIN_MIN } from '../../domain/schedule/startGrain.ts';
import type { BoardHandle } from './boardHandle.ts';
import { HEAD_HEIGHT, NAME_WIDTH, placeAt, ROW_HEIGHT, snapPointer, xOf } from './boardScale.ts';
import type { Carried, CarryStore } from './carryStore.ts';

export type PointerCarry = {
  readonly begin: (event: ReactPointerEvent, start: Omit<Carried, 'by'>) => void;
  /** The click that ends a carry is none. */
  readonly hasJustCarried: () => boolean;
};

const BEGINS_AFTER_PX = 5;
const EDGE_PX = 44;
const SCROLL_PX_PER_FRAME = 14;

export function usePointerCarry(
  handle: BoardHandle,
  carry: CarryStore,
  onDrop: (carried: Carried) => void,
): PointerCarry {
  const latest = useRef({ handle, onDrop });
  useEffect(() => {
    latest.current = { handle, onDrop };
  });
  return useMemo(() => {
    let endedAt = Number.NEGATIVE_INFINITY;
    return {
      hasJustCarried: () => performance.now() - endedAt < 300,
      begin: (event, start) => {
        if (event.button !== 0) return;
        const from = { x: event.clientX, y: event.clientY };
        const grabbedMin = grabbedAt(event, start, latest.current.handle);
        let pointer = from;
        let isCarrying = false;
        let frame = 0;
        const follow = () => {
          frame = 0;
          if (!isCarrying) return;
          const { handle: board } = latest.current;
          const isScrolling = scrollAtEdge(board, pointer);
          const there = spotUnder(board, pointer, grabbedMin, start.startMin);
          if (there !== null) carry.set({ ...start, ...there, by: 'pointer' });
          if (isScrolling) frame = requestAnimationFrame(follow);
        };
        const onMove = (moved: PointerEvent) => {
          pointer = { x: moved.clientX, y: moved.clientY };
          if (!isCarrying && Math.hypot(pointer.x - from.x, pointer.y - from.y) < BEGINS_AFTER_PX) return;
          isCarrying = true;
          moved.preventDefault();
          if (frame === 0) frame = requestAnimationFrame(follow);
        };
        const stop = () => {
          cancelAnimationFrame(frame);
          window.removeEventListener('pointermove', onMove);
          window.removeEventListener('pointerup', onUp);
          window.removeEventListener('pointercancel', onCancel);
          window.removeEventListener('keydown', onKey, true);
          if (isCarrying) endedAt = performance.now();
          isCarrying = false;
        };
        const onUp = () => {
          const wasCarrying = isCarrying;
          const isOverBoard = spotUnder(latest.current.handle, pointer, grabbedMin, start.startMin) !== null;
          stop();
          const carried = carry.get();
          if (wasCarrying && isOverBoard && carried !== null) latest.current.onDrop(carried);
          else carry.set(null);
        };
        const onCancel = () => {
          stop();
          carry.set(null);
        };
        const onKey = (key: KeyboardEvent) => {
          if (key.key !== 'Escape') return;
          key.preventDefault();
          key.stopPropagation();
          onCancel();
        };
        window.addEventListener('pointermove', onMove, { passive: false });
        window.addEventListener('pointerup', onUp);
        window.addEventListener('pointercancel', onCancel);
        window.addEventListener('keydown', onKey, true);
      },
    };
  }, [carry]);
}

type Point = { readonly x: number; readonly y: number };

/** How far into the visit it was taken hold of, so that it does not jump under the pointer. */
function grabbedAt(event: ReactPointerEvent, start: Omit<Carried, 'by'>, { scroller, scale }: BoardHandle): number {
  const frame = scroller.current;
  if (start.what.kind === 'job' || frame === null) return START_GRAIN_MIN;
  const laneX = event.clientX - frame.getBoundingClientRect().left + frame.scrollLeft - NAME_WIDTH;
  return (laneX - xOf(scale, scale.days.indexOf(start.on), start.startMin)) / scale.pxPerMin;
}

/** null: the pointer is not over the board. */
function spotUnder(
  { scroller, rows, scale }: BoardHandle,
  { x, y }: Point,
  grabbedMin: number,
  keptMin: number,
): Pick<Carried, 'staffId' | 'on' | 'startMin'> | null {
  const frame = scroller.current;
  if (frame === null) return null;
  const box = frame.getBoundingClientRect();
  if (x < box.left || x > box.right || y < box.top || y > box.bottom) return null;
  const laneX = x - box.left + frame.scrollLeft - NAME_WIDTH;
  const rowIndex = Math.floor((y - box.top + frame.scrollTop - HEAD_HEIGHT) / ROW_HEIGHT);
  const row = rows[Math.max(0, Math.min(rows.length - 1, rowIndex))];
  if (row === undefined) return null;
  // The day is the one under the pointer, whatever part of the visit was taken hold of.
  const { on, minute } = placeAt(scale, Math.max(0, laneX));
  return { staffId: row.technician.staffId, on, startMin: snapPointer(minute - grabbedMin, scale, keptMin) };
}

function scrollAtEdge({ scroller }: BoardHandle, { x, y }: Point): boolean {
  const frame = scroller.current;
  if (frame === null) return false;
  const box = frame.getBoundingClientRect();
  const before = [frame.scrollLeft, frame.scrollTop];
  if (x > box.right - EDGE_PX) frame.scrollLeft += SCROLL_PX_PER_FRAME;
  else if (x < box.left + NAME_WIDTH + EDGE_PX / 2 && x > box.left) frame.scrollLeft -= SCROLL_PX_PER_FRAME;
  if (y > box.bottom - EDGE_PX) frame.scrollTop += SCROLL_PX_PER_FRAME;
  else if (y < box.top + HEAD_HEIGHT + EDGE_PX / 2 && y > box.top) frame.scrollTop -= SCROLL_PX_PER_FRAME;
  return before[0] !== frame.scrollLeft || before[1] !== frame.scrollTop;
}
