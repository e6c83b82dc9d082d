/**
 * A run that was left for hours in a visit that never ended is shown as if it were taken up now: what has grown too old is open
 * again before anybody lights anything. It is written down with the first thing that is put in; looking changes nothing.
 */
import { useMemo } from 'react';
import { mustBeTakenUp } from '../../../domain/procedure/mustBeTakenUp.ts';
import type { RunView } from '../../../electron/contract/visits.ts';

export function useTakenUp(view: RunView, now: string): RunView {
  // Once a minute is often enough for hours.
  const minute = now.slice(0, 16);
  return useMemo(() => {
    const { record, sheet, reopenedAt, sealedSha256, visit } = view;
    if (sealedSha256 !== null || visit.outcome !== null) return view;
    const at = `${minute}:00.000Z`;
    return mustBeTakenUp({ record, sheet, reopenedAt, now: at }) ? { ...view, reopenedAt: at } : view;
  }, [view, minute]);
}
