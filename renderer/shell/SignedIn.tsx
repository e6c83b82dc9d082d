/** The window of someone who is signed in: the frame with the screen they are on, or the run, which has it to itself. */
import { type ReactNode, useLayoutEffect, useRef } from 'react';
import { ErrorBoundary } from '../kit/ErrorBoundary.tsx';
import type { AppStatusValue } from '../operations/AppStatus.tsx';
import { usePlace } from '../route.ts';
import { RunScreen } from '../run/RunScreen.tsx';
import { CurrentScreen } from './CurrentScreen.tsx';
import { SideColumn } from './SideColumn.tsx';
import { Strips } from './Strips.tsx';
import { useBusyFocus } from './useBusyFocus.ts';
import { useSwitchPersonKey } from './useSwitchPerson.ts';

export function SignedIn({ status }: { readonly status: AppStatusValue }) {
  const place = usePlace();
  useSwitchPersonKey();
  useBusyFocus();
  if (place.screen === 'run') {
    // The boiler room gets the whole window; the run has its own header and way out.
    return (
      <>
        <SkipLink />
        <Strips status={status} />
        <ErrorBoundary>
          <RunScreen
            key={place.params.runId}
            visitId={place.params.visitId}
            runId={place.params.runId}
            stepKey={place.params.stepKey ?? null}
          />
        </ErrorBoundary>
      </>
    );
  }
  return (
    <>
      <SkipLink />
      <div className="lo-frame">
        <SideColumn />
        <div style={{ minWidth: 0 }}>
          <Strips status={status} />
          <Main where={JSON.stringify(place)}>
            <ErrorBoundary key={JSON.stringify(place)}>
              <CurrentScreen place={place} />
            </ErrorBoundary>
          </Main>
        </div>
      </div>
    </>
  );
}

/**
 * The work itself; a change of screen puts the keyboard and the screen reader at its start, or leaves them in its search.
 * `where` is given and not listened for: it must change in the very step that takes the screen before out of the page, else the
 * link that was pressed still has the keyboard when this looks, and takes it along.
 */
function Main({ where, children }: { readonly where: string; readonly children: ReactNode }) {
  const main = useRef<HTMLElement>(null);
  const before = useRef(where);
  // Before it is painted: whoever sees a screen may type at once.
  useLayoutEffect(() => {
    if (before.current === where) return;
    before.current = where;
    window.scrollTo(0, 0);
    if (main.current?.contains(document.activeElement) === false) main.current.focus({ preventScroll: true });
  }, [where]);
  return (
    <main id="main" className="lo-main" ref={main} tabIndex={-1}>
      {children}
    </main>
  );
}

/** A button, not a link: the hash is the route. */
function SkipLink() {
  return (
    <button type="button" className="lo-skip" onClick={() => document.getElementById('main')?.focus()}>
      Skip to the work
    </button>
  );
}
