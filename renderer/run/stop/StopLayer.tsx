/** What lies over the run: a stop that has just been found, or the make-safe. F8 opens a make-safe from anywhere. */
import { useEffect, useRef } from 'react';
import { focusActive } from '../focus/focusActive.ts';
import { useRun } from '../state/RunContext.ts';
import { MakeSafePanel } from './MakeSafePanel.tsx';
import { StopTakeover } from './StopTakeover.tsx';
import type { MakeSafes } from './useMakeSafes.ts';
import type { Stops } from './useStops.ts';

export function StopLayer({ makeSafes, stops }: { readonly makeSafes: MakeSafes; readonly stops: Stops }) {
  const { analysis, active } = useRun();
  const { open, isShown } = makeSafes;
  const { stop, worst, markSeen, stopAndMakeSafe } = stops;

  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.key !== 'F8') return;
      event.preventDefault();
      event.stopPropagation();
      if (!event.repeat) stopAndMakeSafe();
    };
    window.addEventListener('keydown', onKey, true);
    return () => window.removeEventListener('keydown', onKey, true);
  }, [stopAndMakeSafe]);

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
