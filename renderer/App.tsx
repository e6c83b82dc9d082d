/** Decides what a person may see at all: first run, sign-in, or the frame with the screen they are on. */
import { type ReactNode, useEffect, useRef } from 'react';
import { OwnDrafts } from './form/OwnDrafts.tsx';
import { ErrorBoundary } from './kit/ErrorBoundary.tsx';
import { type ErrorCode, type ErrorWith, errorWords } from './kit/errorWords.ts';
import { Note } from './kit/Note.tsx';
import { AppStatus, type AppStatusValue, useAppStatus } from './operations/AppStatus.tsx';
import { useChangeFollowing } from './operations/useChangeFollowing.ts';
import { useForgetting } from './operations/useForgetting.ts';
import { useOperation } from './operations/useOperation.ts';
import { usePlace } from './route.ts';
import { RunScreen } from './run/RunScreen.tsx';
import { CurrentScreen } from './shell/CurrentScreen.tsx';
import { LeaveGuard } from './shell/LeaveGuard.tsx';
import { SideColumn } from './shell/SideColumn.tsx';
import { ConnectionStrip, Strips } from './shell/Strips.tsx';
import { useSwitchPersonKey } from './shell/useSwitchPerson.ts';
import { Shortcuts } from './shortcuts/Shortcuts.tsx';
import { FirstRunScreen } from './start/FirstRunScreen.tsx';
import { SignInScreen } from './start/SignInScreen.tsx';

export function App() {
  useChangeFollowing();
  const status = useOperation('app.status', {});
  switch (status.state) {
    case 'loading':
      return (
        <main className="lo-alone" aria-busy="true">
          <ConnectionStrip />
          <p className="lo-faint">Opening the store …</p>
        </main>
      );
    case 'failed':
      return (
        <main className="lo-alone">
          <ConnectionStrip />
          <Note tone="ember" isSpoken>
            {errorWords(status.error as ErrorWith<ErrorCode>)}
          </Note>
        </main>
      );
    case 'ready':
      return (
        <AppStatus status={status.value}>
          <Shortcuts>
            <LeaveGuard>
              <Gate />
            </LeaveGuard>
          </Shortcuts>
        </AppStatus>
      );
  }
}

function Gate() {
  const status = useAppStatus();
  useForgetting(status.signedIn === null);
  const place = usePlace();
  if (status.store === 'empty') return <Alone>{<FirstRunScreen />}</Alone>;
  if (status.signedIn === null) return <Alone>{<SignInScreen />}</Alone>;
  return (
    <OwnDrafts staffId={status.signedIn.staffId}>
      <Place place={place} status={status} />
    </OwnDrafts>
  );
}

function Place({ place, status }: { readonly place: ReturnType<typeof usePlace>; readonly status: AppStatusValue }) {
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

/** The work itself; a change of screen puts the keyboard and the screen reader at its start. */
function Main({ children }: { readonly children: ReactNode }) {
  const place = usePlace();
  const main = useRef<HTMLElement>(null);
  const where = JSON.stringify(place);
  const before = useRef(where);
  useEffect(() => {
    if (before.current === where) return;
    before.current = where;
    window.scrollTo(0, 0);
    main.current?.focus({ preventScroll: true });
  }, [where]);
  return (
    <main id="main" className="lo-main" ref={main} tabIndex={-1}>
      {children}
    </main>
  );
}

function Alone({ children }: { readonly children: ReactNode }) {
  const status = useAppStatus();
  return (
    <>
      <Strips status={status} />
      <main id="main" className="lo-alone">
        {children}
      </main>
    </>
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
