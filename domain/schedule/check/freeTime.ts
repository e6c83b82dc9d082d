/** The checker's own arithmetic of a day: minutes that are nobody's break, and the way through them. */
import { LONGEST_PAUSE_MIN, type TimeSpan, type WorkDay } from '../planningProblem.ts';

/** Breaks of a technician's day; in order, without overlap. */
export function closedSpans(day: Pick<WorkDay, 'breaks'> | undefined): readonly TimeSpan[] {
  const sorted = (day?.breaks ?? []).filter((span) => span.toMin > span.fromMin);
  sorted.sort((a, b) => a.fromMin - b.fromMin || a.toMin - b.toMin);
  const merged: { fromMin: number; toMin: number }[] = [];
  for (const span of sorted) {
    const last = merged.at(-1);
    if (last !== undefined && span.fromMin <= last.toMin) last.toMin = Math.max(last.toMin, span.toMin);
    else merged.push({ ...span });
  }
  return merged;
}

export function freeMinutes(closed: readonly TimeSpan[], fromMin: number, toMin: number): number {
  const taken = closed.reduce(
    (sum, span) => sum + Math.max(0, Math.min(span.toMin, toMin) - Math.max(span.fromMin, fromMin)),
    0,
  );
  return toMin - fromMin - taken;
}

/**
 * The minute at which so many minutes of work are done; null when the work would run into closed time. Work that may pause
 * is left for short closed spans that begin after it has.
 */
export function finishOf(
  closed: readonly TimeSpan[],
  startMin: number,
  visit: { readonly durationMin: number; readonly mayPause: boolean },
): number | null {
  let left = visit.durationMin;
  let at = startMin;
  while (left > 0) {
    const next = closed.find((span) => span.toMin > at);
    const room = next === undefined ? left : next.fromMin - at;
    if (next === undefined || room >= left) return at + left;
    if (!visit.mayPause || at + room <= startMin || next.toMin - next.fromMin > LONGEST_PAUSE_MIN) return null;
    left -= room;
    at = next.toMin;
  }
  return at;
}

/** The first minute by which so many free ones have passed. */
export function arrivalAfter(closed: readonly TimeSpan[], fromMin: number, travelMin: number): number {
  let at = fromMin;
  let left = travelMin;
  while (left > 0) {
    const span = closed.find((one) => one.toMin > at);
    if (span === undefined) return at + left;
    if (span.fromMin > at) {
      const step = Math.min(left, span.fromMin - at);
      at += step;
      left -= step;
    } else {
      at = span.toMin;
    }
  }
  return at;
}
