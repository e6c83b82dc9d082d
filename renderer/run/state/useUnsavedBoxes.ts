/** The boxes whose text did not reach the store, so that nobody leaves without knowing. */
import { useCallback, useMemo, useState } from 'react';
import type { ItemAddress } from '../../../domain/procedure/progressTypes.ts';

export type UnsavedBox = ItemAddress & { readonly box: string; readonly label: string; readonly why: string };

export type UnsavedBoxes = {
  readonly list: readonly UnsavedBox[];
  readonly add: (box: UnsavedBox) => void;
  readonly remove: (box: Pick<UnsavedBox, 'itemKey' | 'box'>) => void;
};

export function useUnsavedBoxes(leftOver: () => readonly UnsavedBox[]): UnsavedBoxes {
  const [list, setList] = useState<readonly UnsavedBox[]>(leftOver);
  const add = useCallback(
    (box: UnsavedBox) => setList((boxes) => [...boxes.filter((one) => !isSame(one, box)), box]),
    [],
  );
  const remove = useCallback(
    (box: Pick<UnsavedBox, 'itemKey' | 'box'>) =>
      setList((boxes) => (boxes.some((one) => isSame(one, box)) ? boxes.filter((one) => !isSame(one, box)) : boxes)),
    [],
  );
  return useMemo(() => ({ list, add, remove }), [list, add, remove]);
}

function isSame(one: Pick<UnsavedBox, 'itemKey' | 'box'>, other: Pick<UnsavedBox, 'itemKey' | 'box'>): boolean {
  return one.itemKey === other.itemKey && one.box === other.box;
}
