/**
 * One box: what is typed, kept as a draft until the store has taken it, and what became of the last save. Saved when it is
 * left and on Enter; a refused save leaves the text where it is and says why.
 */
import { useEffect, useRef, useState } from 'react';
import type { ItemAddress } from '../../../domain/procedure/progressTypes.ts';
import type { SaveState } from '../../kit/FieldSaved.tsx';
import { useRun } from '../state/RunContext.ts';
import { clearDraft, type DraftKey, readDraft, writeDraft } from './drafts.ts';

export type SaveOutcome = { readonly ok: true } | { readonly ok: false; readonly why: string };

export type Field = {
  readonly text: string;
  readonly type: (text: string) => void;
  readonly state: SaveState;
  /** Something is typed that the store does not have, be it the same once more. */
  readonly isChanged: boolean;
  /** True when nothing is left to save. */
  readonly commit: () => Promise<boolean>;
};

export function useField(options: {
  readonly address: ItemAddress;
  readonly box: string;
  readonly label: string;
  /** As the store has it. */
  readonly stored: string;
  readonly save: (text: string) => Promise<SaveOutcome>;
}): Field {
  const { address, box, label, stored, save } = options;
  const { view, unsaved } = useRun();
  const key: DraftKey = { runId: view.runId, itemKey: address.itemKey, box };
  const [draft, setDraft] = useState<string | null>(() => readDraft(sessionStorage, key));
  const [state, setState] = useState<SaveState>({ kind: 'idle' });
  const text = draft ?? stored;
  const latest = useRef({ text, draft, save });
  const running = useRef<Promise<boolean> | null>(null);
  useEffect(() => {
    latest.current = { text, draft, save };
  });

  const type = (typed: string) => {
    latest.current = { ...latest.current, text: typed, draft: typed };
    writeDraft(sessionStorage, key, typed);
    setDraft(typed);
    setState((before) => (before.kind === 'idle' ? before : { kind: 'idle' }));
  };

  const forget = () => {
    latest.current = { ...latest.current, draft: null };
    clearDraft(sessionStorage, key);
    unsaved.remove({ itemKey: address.itemKey, box });
    setDraft(null);
  };

  const saveNow = async (): Promise<boolean> => {
    const typed = latest.current.draft;
    if (typed === null) return true;
    // An emptied box erases nothing: what is stored stays, and "not measured" is said with its reason.
    if (typed.trim() === '') {
      forget();
      return true;
    }
    setState({ kind: 'saving' });
    const outcome = await latest.current.save(typed);
    if (outcome.ok) {
      // Typed on meanwhile: that is a text of its own.
      if (latest.current.draft === typed) forget();
      setState({ kind: 'saved' });
      return true;
    }
    unsaved.add({ ...address, box, label, why: outcome.why });
    setState({ kind: 'not-saved', why: outcome.why });
    return false;
  };

  // Enter saves, and leaving the box a moment later must not save a second time.
  const commit = () => {
    running.current ??= saveNow().finally(() => {
      running.current = null;
    });
    return running.current;
  };

  return { text, type, state, isChanged: draft !== null, commit };
}
