/** The boxes of a line that is not on its list yet: what is typed in them outlives a reload, and nobody leaves it unsaid. */
import { useEffect, useRef, useState } from 'react';
import type { ItemAddress } from '../../../domain/procedure/progressTypes.ts';
import { clearDraft, readDraft, writeDraft } from '../field/drafts.ts';
import { useRun } from './RunContext.ts';

export type RowBoxes<K extends string> = {
  readonly values: Readonly<Record<K, string>>;
  readonly type: (box: K, text: string) => void;
  /** Once the line is on the list. */
  readonly clear: (boxes: readonly K[]) => void;
};

/** `initial`: what stands in a box before anybody types. */
export function useRowBoxes<K extends string>(
  address: ItemAddress,
  label: string,
  initial: Readonly<Record<K, string>>,
): RowBoxes<K> {
  const { view, unsaved } = useRun();
  const [boxes] = useState(() => Object.keys(initial) as K[]);
  const keyOf = (box: K) => ({ runId: view.runId, itemKey: address.itemKey, box: `row ${box}` });
  const [typed, setTyped] = useState<Partial<Record<K, string>>>(
    () =>
      Object.fromEntries(
        boxes.flatMap((box) => {
          const draft = readDraft(sessionStorage, keyOf(box));
          return draft === null ? [] : [[box, draft]];
        }),
      ) as Partial<Record<K, string>>,
  );
  const forget = (box: K) => {
    clearDraft(sessionStorage, keyOf(box));
    unsaved.remove({ itemKey: address.itemKey, box: `row ${box}` });
  };
  const latest = useRef({ typed, unsaved, address, label });
  useEffect(() => {
    latest.current = { typed, unsaved, address, label };
  });
  useEffect(
    () => () => {
      const { typed: left, unsaved: list, address: at, label: words } = latest.current;
      for (const [box, text] of Object.entries<string | undefined>(left)) {
        if (text?.trim())
          list.add({ ...at, box: `row ${box}`, label: words, why: 'Typed, and not added to the list.' });
      }
    },
    [],
  );
  return {
    values: { ...initial, ...typed },
    type(box, text) {
      // An emptied box that was empty to begin with is no draft.
      if (text === '' && initial[box] === '') forget(box);
      else writeDraft(sessionStorage, keyOf(box), text);
      setTyped((before) => ({ ...before, [box]: text }));
    },
    clear(cleared) {
      for (const box of cleared) forget(box);
      setTyped((before) => {
        const kept = { ...before };
        for (const box of cleared) delete kept[box];
        return kept;
      });
    },
  };
}
