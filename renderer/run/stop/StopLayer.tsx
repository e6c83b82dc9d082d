/** What lies over the run: a stop that has just been found, or the make-safe. F8 opens a make-safe from anywhere. */
import { useEffect, useMemo, useRef, useState } from 'react';
import { focusActive } from '../focus/focusActive.ts';
import { useRun } from '../state/RunContext.ts';
import { MakeSafePanel } from './MakeSafePanel.tsx';
import { StopTakeover } from './StopTakeover.tsx';
import { type Stop, stopsOf } from './stopsOf.ts';
import type { MakeSafes } from './useMakeSafes.ts';

export function StopLayer({ makeSafes }: { readonly makeSafes: MakeSafes }) {
  const { view, analysis, active, isSealed } = useRun();
  const [seen, setSeen] = useState<ReadonlySet<string>>(new Set());
  const stops = useMemo(() => stopsOf(view, analysis), [view, analysis]);
  const { lastClosedAt } = makeSafes;
  // What a make-safe has been closed for since is to be read again: it stands in the list, and takes over no more.
  const isReleased = (one: Stop) => lastClosedAt !== null && one.since <= lastClosedAt;
  const stop =
    isSealed || view.record.openMakeSafes > 0 ? undefined : stops.find((one) => !seen.has(one.key) && !isReleased(one));
  const step = analysis.steps.find((one) => one.key === active?.stepKey);
  const { open, show, isShown } = makeSafes;
  const hasOpen = view.record.openMakeSafes > 0;
  const worst = stop ?? stops[0];

  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.key !== 'F8') return;
      event.preventDefault();
      event.stopPropagation();
      if (event.repeat || isShown) return;
      if (hasOpen) show();
      else open(worst?.what ?? `Stopped by hand${step === undefined ? '' : ` at “${step.title}”`}`);
    };
    window.addEventListener('keydown', onKey, true);
    return () => window.removeEventListener('keydown', onKey, true);
  }, [hasOpen, isShown, open, show, worst, step]);

  // What had the keyboard before may have gone meanwhile: it goes back to the item that is worked on, which comes back only
  // when what the stop had locked is open again.
  const isShut = analysis.progress.steps.some((one) => one.stepKey === active?.stepKey && one.state === 'locked');
  const isOver = isShown || stop !== undefined;
  const owesKeyboard = useRef(false);
  useEffect(() => {
    if (isOver) {
      owesKeyboard.current = true;
      return;
    }
    if (!owesKeyboard.current || active === null) return;
    if (document.activeElement === document.body) focusActive(active);
    // While the step is shut the keyboard rests on what goes when it opens.
    owesKeyboard.current = isShut || document.activeElement === document.body;
    // Looked at after every drawing: nothing else tells when the item can take it again.
  });

  const markSeen = (one: Stop) => setSeen((before) => new Set([...before, one.key]));
  if (isShown) return <MakeSafePanel makeSafes={makeSafes} stop={worst ?? null} />;
  if (stop === undefined) return null;
  return (
    <StopTakeover
      key={stop.key}
      stop={stop}
      onMakeSafe={() => {
        markSeen(stop);
        open(stop.what);
      }}
      onLookAgain={() => markSeen(stop)}
    />
  );
}
