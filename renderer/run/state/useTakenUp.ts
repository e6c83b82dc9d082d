/**
 * A run that was left for hours in a visit that never ended is shown as if it were taken up now: what has grown too old is open
 * again before anybody lights anything. It is written down with the first thing that is put in; looking changes nothing.
 */
import { useMemo } from 'react';
import { isOnlyToBeEnded, mustBeTakenUp } from '../../../domain/procedure/mustBeTakenUp.ts';
import type { PastRun } from '../../../domain/trend/pastRun.ts';
import type { RunView } from '../../../electron/contract/runs.ts';
import { analyseRun, judgeView } from '../analyseRun.ts';

export function useTakenUp(view: RunView, past: readonly PastRun[], now: string): RunView {
  // Once a minute is often enough for hours.
  const at = `${now.slice(0, 16)}:00.000Z`;
  return useMemo(() => takenUpAt(view, past, at), [view, past, at]);
}

export function takenUpAt(view: RunView, past: readonly PastRun[], at: string): RunView {
  const { record, sheet, reopenedAt, sealedSha256, visit } = view;
  if (sealedSha256 !== null || visit.outcome !== null) return view;
  if (!mustBeTakenUp({ record, sheet, reopenedAt, now: at }) || hasOnlyToBeEnded(view, past, at)) return view;
  return { ...view, reopenedAt: at };
}

function hasOnlyToBeEnded(view: RunView, past: readonly PastRun[], now: string): boolean {
  return isOnlyToBeEnded(analyseRun(view, judgeView(view, past), { now, firingReleasedAt: null }).progress);
}
