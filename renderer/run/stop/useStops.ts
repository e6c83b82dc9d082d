/** What takes over the run now, and the one way to make safe: the same by F8 and by the button that is always on screen. */
import { useCallback, useMemo, useState } from 'react';
import type { RunView } from '../../../electron/contract/runs.ts';
import type { RunAnalysis } from '../analyseRun.ts';
import { type Stop, stopsOf } from './stopsOf.ts';
import type { MakeSafes } from './useMakeSafes.ts';

export type Stops = {
  /** Takes over the screen; undefined: nothing does. */
  readonly stop: Stop | undefined;
  /** What a make-safe would be for. */
  readonly worst: Stop | undefined;
  readonly markSeen: (stop: Stop) => void;
  /** Shows the make-safe that is open, or opens one: for what was found, or else by hand. */
  readonly stopAndMakeSafe: () => void;
};

export function useStops(
  view: RunView,
  analysis: RunAnalysis,
  { lastClosedAt, isShown, open, show }: MakeSafes,
  /** Where the work stands, for a stop by hand. */
  stepTitle: string | undefined,
): Stops {
  const [seen, setSeen] = useState<ReadonlySet<string>>(new Set());
  const stops = useMemo(() => stopsOf(view, analysis), [view, analysis]);
  const hasOpen = view.record.openMakeSafes > 0;
  // What a make-safe has been closed for since is to be read again: it stands in the list, and takes over no more.
  const isReleased = (one: Stop) => lastClosedAt !== null && one.since <= lastClosedAt;
  const standing = stops.filter((one) => !isReleased(one));
  const stop = view.sealedSha256 !== null || hasOpen ? undefined : standing.find((one) => !seen.has(one.key));
  const worst = stop ?? standing[0];
  const markSeen = useCallback((one: Stop) => setSeen((before) => new Set([...before, one.key])), []);
  const stopAndMakeSafe = useCallback(() => {
    if (isShown) return;
    if (hasOpen) show();
    else open(worst?.what ?? `Stopped by hand${stepTitle === undefined ? '' : ` at “${stepTitle}”`}`);
  }, [hasOpen, isShown, open, show, worst, stepTitle]);
  return { stop, worst, markSeen, stopAndMakeSafe };
}
