/** A small choice on a screen (a search, a filter) that is still there when one comes back to it. */
import { useCallback, useState } from 'react';

export function useKept(key: string, initial: string): readonly [string, (value: string) => void] {
  const storageKey = `lightoff.kept.${key}`;
  const [value, setValue] = useState(() => window.sessionStorage.getItem(storageKey) ?? initial);
  const keep = useCallback(
    (next: string) => {
      window.sessionStorage.setItem(storageKey, next);
      setValue(next);
    },
    [storageKey],
  );
  return [value, keep];
}
