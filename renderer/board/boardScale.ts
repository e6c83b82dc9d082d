/** Where on the board a day and a minute lie, and back. Days stand side by side, each showing the same hours. */
import type { BoardRowModel } from './boardModel.ts';

export type BoardScale = {
  readonly days: readonly string[];
  readonly fromMin: number;
  readonly toMin: number;
  readonly pxPerMin: number;
  readonly dayWidth: number;
};

export type BoardView = 'day' | 'week';

/** Wide enough for the time in a visit of an hour and a half. */
const PX_PER_MIN = { day: 0.9, week: 0.5 } as const;
const USUAL_FROM_MIN = 420;
const USUAL_TO_MIN = 1080;
export const SNAP_MIN = 15;
export const NAME_WIDTH = 144;
export const HEAD_HEIGHT = 56;
export const ROW_HEIGHT = 92;

/** The usual day, widened to whatever lies outside it. */
export function toScale(rows: readonly BoardRowModel[], days: readonly string[], view: BoardView): BoardScale {
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
  const pxPerMin = PX_PER_MIN[view];
  return { days, fromMin, toMin, pxPerMin, dayWidth: (toMin - fromMin) * pxPerMin };
}

export function xOf(scale: BoardScale, dayIndex: number, minute: number): number {
  return dayIndex * scale.dayWidth + (minute - scale.fromMin) * scale.pxPerMin;
}

/** The day and the minute, to the quarter of an hour, that lie at this place. */
export function placeAt(scale: BoardScale, x: number): { readonly on: string; readonly startMin: number } {
  const index = Math.max(0, Math.min(scale.days.length - 1, Math.floor(x / scale.dayWidth)));
  const minute = scale.fromMin + (x - index * scale.dayWidth) / scale.pxPerMin;
  return { on: scale.days[index] ?? '', startMin: snap(minute, scale) };
}

export function snap(minute: number, scale: BoardScale): number {
  const snapped = Math.round(minute / SNAP_MIN) * SNAP_MIN;
  return Math.max(scale.fromMin, Math.min(scale.toMin - SNAP_MIN, snapped));
}
