/** Where one is in a list that comes a page at a time. */
import { useState } from 'react';

export type Pages = {
  readonly after: string | null;
  readonly isFirst: boolean;
  readonly goOn: (next: string) => void;
  readonly goBack: () => void;
};

/** Another `of` (a new search) starts at the first page again. */
export function usePages(of: string): Pages {
  const [cursors, setCursors] = useState<{ readonly of: string; readonly list: readonly string[] }>({ of, list: [] });
  const list = cursors.of === of ? cursors.list : [];
  return {
    after: list.at(-1) ?? null,
    isFirst: list.length === 0,
    goOn: (next) => setCursors({ of, list: [...list, next] }),
    goBack: () => setCursors({ of, list: list.slice(0, -1) }),
  };
}
