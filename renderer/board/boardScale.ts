/** Where on the board a day and a minute lie, and back. Days stand side by side, each showing the same hours. */
import { START_GRAIN_MIN } from '../../domain/schedule/startGrain.ts';
import type { BoardRowModel } from './boardModel.ts';

export type BoardScale = {
  readonly days: readonly string[];
  readonly fromMin: number;
  readonly toMin: number;
  readonly pxPerMin: number;
  readonly dayWidth: number;
  /** The whole week is in sight: too narrow for the words of a visit to stand inside its time. */
  readonly isCompact: boolean;
  /** A line and a number stand at every so many minutes. */
  readonly gridMin: number;
};

/** `hours`: a week with so much room for each hour that only some of its days are in sight. */
export type BoardView = 'day' | 'week' | 'hours';

/** Wide enough for the time in a visit of an hour and a half. */
const PX_PER_MIN = { day: 0.9, hours: 0.5 } as const;
/** A narrower day shows nothing but marks: then the board is scrolled instead. */
const LEAST_DAY_PX = 96;
/** Room for the number of an hour. */
const LEAST_GRID_PX = 30;
const GRID_STEPS_H = [1, 2, 4, 6, 12];
const USUAL_FROM_MIN = 420;
const USUAL_TO_MIN = 1080;
/** Where a quarter of an hour is narrower than a hand is steady, the pointer goes by half hours; keys go by quarters. */
const COARSE_SNAP_MIN = 30;
const STEADY_PX = 5;
/** A hand that moves straight down to another person strays this far sideways. */
const STRAYS_PX = 8;
export const NAME_WIDTH = 144;
export const HEAD_HEIGHT = 56;
export const ROW_HEIGHT = 92;

/**
 * The usual day, widened to whatever lies outside it. `roomPx`: how wide the days together may be for a week to be seen at once;
 * null where that is not known yet.
 */
export function toScale(
  rows: readonly BoardRowModel[],
  days: readonly string[],
  view: BoardView,
  roomPx: number | null,
): BoardScale {
  let [fromMin, toMin] = [USUAL_FROM_MIN, USUAL_TO_MIN];
  for (const row of rows)
    for (const day of row.days) {
      for (const span of day.spans) {
        fromMin = Math.min(fromMin, span.fromMin);
        toMin = Math.max(toMin, span.toMin);
      }
      for (const { startMin, visit } of day.blocks) {
        fromMin = Math.min(fromMin, startMin);
        toMin = Math.max(toMin, Math.min(1440, startMin + visit.durationMin));
      }
    }
  const hour = 60;
  fromMin = Math.floor(fromMin / hour) * hour;
  toMin = Math.min(1440, Math.ceil(toMin / hour) * hour);
  const isFitted = view === 'week' && roomPx !== null && days.length > 0;
  const fitted = isFitted ? Math.max(LEAST_DAY_PX, roomPx / days.length) / (toMin - fromMin) : PX_PER_MIN.hours;
  const pxPerMin = view === 'day' ? PX_PER_MIN.day : Math.min(PX_PER_MIN.hours, fitted);
  const gridH = GRID_STEPS_H.find((step) => step * hour * pxPerMin >= LEAST_GRID_PX) ?? hour;
  return {
    days,
    fromMin,
    toMin,
    pxPerMin,
    dayWidth: (toMin - fromMin) * pxPerMin,
    isCompact: view === 'week',
    gridMin: gridH * hour,
  };
}

export function xOf(scale: BoardScale, dayIndex: number, minute: number): number {
  return dayIndex * scale.dayWidth + (minute - scale.fromMin) * scale.pxPerMin;
}

/** The day and the minute, to the pixel, that lie at this place. */
export function placeAt(scale: BoardScale, x: number): { readonly on: string; readonly minute: number } {
  const index = Math.max(0, Math.min(scale.days.length - 1, Math.floor(x / scale.dayWidth)));
  return {
    on: scale.days[index] ?? '',
    minute: scale.fromMin + (x - index * scale.dayWidth) / scale.pxPerMin,
  };
}

/** `keptMin`: the time it had; in a compact week it is kept unless the hand clearly means another. */
export function snapPointer(minute: number, scale: BoardScale, keptMin: number): number {
  if (scale.isCompact && Math.abs(minute - keptMin) * scale.pxPerMin <= STRAYS_PX) return keptMin;
  return snap(minute, scale, START_GRAIN_MIN * scale.pxPerMin < STEADY_PX ? COARSE_SNAP_MIN : START_GRAIN_MIN);
}

export function snap(minute: number, scale: BoardScale, stepMin = START_GRAIN_MIN): number {
  const snapped = Math.round(minute / stepMin) * stepMin;
  return Math.max(scale.fromMin, Math.min(scale.toMin - START_GRAIN_MIN, snapped));
}
