/** Asks a question again after a moment, as long as the answer says that more is to come. */
import { useEffect } from 'react';

const AFTER_MS = 400;

export function useAskAgain({ askAgain }: { readonly askAgain: () => void }, isMoreToCome: boolean): void {
  // After every answer anew: one that brought no news leaves nothing to wait for otherwise.
  useEffect(() => {
    if (!isMoreToCome) return;
    const timer = setTimeout(askAgain, AFTER_MS);
    return () => clearTimeout(timer);
  });
}
