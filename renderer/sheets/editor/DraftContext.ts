/** The draft that the fields of the editor read and write. */
import { createContext, useContext } from 'react';
import type { SheetPath } from '../../../domain/procedure/sheetEdit.ts';
import { valueAt } from './checkDraft.ts';
import type { SheetDraft } from './useSheetDraft.ts';

/** `wanted`: the place somebody asked to be led to; lists on the way open themselves. */
export type ShownDraft = SheetDraft & { readonly wanted: string | null };

export const DraftContext = createContext<ShownDraft | null>(null);

export function useDraft(): ShownDraft {
  const value = useContext(DraftContext);
  if (value === null) throw new Error('a field of a sheet is shown outside of its editor');
  return value;
}

/** What stands at a place, and what is wrong right there; for a part with no fields of its own, anywhere in it. */
export function useAtPath(path: SheetPath, isWhole: boolean) {
  const draft = useDraft();
  const key = path.join('.');
  const problem = draft.problems.find((one) => one.path === key || (isWhole && one.path.startsWith(`${key}.`)));
  return { draft, key, value: valueAt(draft.body, path), problem: problem?.words };
}
