/** Puts the keyboard into the first field of a row that was just added. */
import { useCallback, useRef } from 'react';

export type FocusAdded = {
  readonly added: (rowId: string) => void;
  /** As `ref` of each row. */
  readonly rowRef: (rowId: string) => (row: HTMLElement | null) => void;
};

export function useFocusAdded(): FocusAdded {
  const waiting = useRef<string | null>(null);
  const added = useCallback((rowId: string) => {
    waiting.current = rowId;
  }, []);
  const rowRef = useCallback(
    (rowId: string) => (row: HTMLElement | null) => {
      if (row === null || waiting.current !== rowId) return;
      waiting.current = null;
      row.querySelector<HTMLElement>('input, select')?.focus();
    },
    [],
  );
  return { added, rowRef };
}
