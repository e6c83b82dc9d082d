/** Decides what a person may see at all: first run, sign-in, or the frame with the screen they are on. */
import { lazy, type ReactNode, Suspense, useEffect } from 'react';
import { OwnDrafts } from './form/OwnDrafts.tsx';
import { type ErrorCode, type ErrorWith, errorWords } from './kit/errorWords.ts';
import { Note } from './kit/Note.tsx';
import { AppStatus, useAppStatus } from './operations/AppStatus.tsx';
import { useChangeFollowing } from './operations/useChangeFollowing.ts';
import { useForgetting } from './operations/useForgetting.ts';
import { useOperation } from './operations/useOperation.ts';
import { LeaveGuard } from './shell/LeaveGuard.tsx';
import { ConnectionStrip, Strips } from './shell/Strips.tsx';
import { Shortcuts } from './shortcuts/Shortcuts.tsx';
import { SignInScreen } from './start/SignInScreen.tsx';

/** Half of the code: read in once the app has asked who is to work, so that the question comes sooner. */
const readIn = async () => ({ default: (await import('./shell/SignedIn.tsx')).SignedIn });
const SignedIn = lazy(readIn);
const RescueScreen = lazy(async () => ({ default: (await import('./start/RescueScreen.tsx')).RescueScreen }));
const FirstRunScreen = lazy(async () => ({ default: (await import('./start/FirstRunScreen.tsx')).FirstRunScreen }));

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
      if (status.error.code === 'store-closed') {
        return (
          <main id="main" className="lo-alone" data-wide>
            <Suspense>
              <RescueScreen />
            </Suspense>
          </main>
        );
      }
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
  useEffect(() => void requestIdleCallback(readIn), []);
  if (status.store === 'empty') {
    return (
      <Alone>
        <Suspense>
          <FirstRunScreen />
        </Suspense>
      </Alone>
    );
  }
  if (status.signedIn === null) return <Alone>{<SignInScreen />}</Alone>;
  return (
    <OwnDrafts staffId={status.signedIn.staffId}>
      <Suspense fallback={<main className="lo-alone" aria-busy="true" />}>
        <SignedIn status={status} />
      </Suspense>
    </OwnDrafts>
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
