/** Hands the window to somebody else: Alt+W from anywhere, also in the middle of a run. The place stays, and drafts wait for their owner. */
import { useEffect } from 'react';
import { useAct } from '../operations/useAct.ts';
import { isAltKey } from '../run/focus/isAltKey.ts';

export const SWITCH_KEY = 'Alt+W';

export function useSwitchPerson(): { readonly switchPerson: () => void; readonly isBusy: boolean } {
  const signOut = useAct('session.signOut');
  return { switchPerson: () => void signOut.act({}), isBusy: signOut.isBusy };
}

/** For the one place that listens. */
export function useSwitchPersonKey(): void {
  const { act } = useAct('session.signOut');
  useEffect(() => {
    const listen = (event: KeyboardEvent) => {
      if (!isAltKey(event, 'W') || document.querySelector('dialog[open]') !== null) return;
      event.preventDefault();
      // The box that is being filled saves what is in it when it is left.
      if (document.activeElement instanceof HTMLElement) document.activeElement.blur();
      void act({});
    };
    window.addEventListener('keydown', listen);
    return () => window.removeEventListener('keydown', listen);
  }, [act]);
}
