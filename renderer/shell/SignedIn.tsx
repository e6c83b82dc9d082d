/** The window of someone who is signed in: the frame with the screen they are on, or the run, which has it to itself. */
import { type ReactNode, useLayoutEffect, useRef } from 'react';
import { ErrorBoundary } from '../kit/ErrorBoundary.tsx';
import type { AppStatusValue } from '../operations/AppStatus.tsx';
import { usePlace } from '../route.ts';
import { RunScreen } from '../run/RunScreen.tsx';
import { CurrentScreen } from './CurrentScreen.tsx';
import { SideColumn } from './SideColumn.tsx';
import { Strips } from './Strips.tsx';
import { useSwitchPersonKey } from './useSwitchPerson.ts';

export function SignedIn({ status }: { readonly status: AppStatusValue }) {
  const place = usePlace();
  useSwitchPersonKey();
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
          <Main>
            <ErrorBoundary key={JSON.stringify(place)}>
              <CurrentScreen place={place} />
            </ErrorBoundary>
          </Main>
        </div>
      </div>
    </>
  );
}

/** The work itself; a change of screen puts the keyboard and the screen reader at its start, or leaves them in its search. */
function Main({ children }: { readonly children: ReactNode }) {
  const place = usePlace();
  const main = useRef<HTMLElement>(null);
  const where = JSON.stringify(place);
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
