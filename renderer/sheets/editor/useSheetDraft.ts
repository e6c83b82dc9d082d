/** A draft on screen: what is typed shows and is checked at once, and is kept as soon as its field is left. */
import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { applySheetEdit, type Json, type SheetEdit, type SheetPath } from '../../../domain/procedure/sheetEdit.ts';
import type { ErrorsOf, OutputOf } from '../../../electron/contract/index.ts';
import { useCore } from '../../operations/CoreAccess.tsx';
import { checkDraft, type DraftProblem, doubtsOf, valueAt } from './checkDraft.ts';

type Loaded = OutputOf<'sheetDrafts.get'>;
type Pending = { readonly path: SheetPath; readonly value: Json | undefined };
type EditError = ErrorsOf<'sheetDrafts.edit' | 'sheetDrafts.undo'>;

export type SheetDraft = {
  /** With what is being typed in it. */
  readonly body: Json;
  readonly problems: readonly DraftProblem[];
  /** Not wrong, and yet hardly meant; they keep nothing from being published. */
  readonly doubts: readonly DraftProblem[];
  readonly editCount: number;
  readonly canUndo: boolean;
  readonly isSaving: boolean;
  readonly error: EditError | null;
  /** What a field holds while it is typed in; `undefined` leaves the field away. */
  readonly type: (path: SheetPath, value: Json | undefined) => void;
  /** Keeps what was typed. */
  readonly leave: () => void;
  readonly edit: (edit: SheetEdit) => void;
  readonly undo: () => void;
  /** Resolves when everything typed so far is kept. */
  readonly settled: () => Promise<number>;
};

export function useSheetDraft(loaded: Loaded): SheetDraft {
  const core = useCore();
  const { draftId } = loaded;
  const [kept, setKept] = useState(loaded);
  const [pending, setPending] = useState<Pending | null>(null);
  const [waiting, setWaiting] = useState(0);
  const [error, setError] = useState<EditError | null>(null);
  const latest = useRef({ kept, pending });
  const queue = useRef(Promise.resolve());
  const refusals = useRef(0);

  const show = useCallback((next: Partial<{ kept: Loaded; pending: Pending | null }>) => {
    latest.current = { ...latest.current, ...next };
    setKept(latest.current.kept);
    setPending(latest.current.pending);
  }, []);

  // Another window went on with the draft: what it made of it is shown here, once nothing of ours is on its way.
  useEffect(() => {
    if (waiting === 0 && loaded.editCount > latest.current.kept.editCount) show({ kept: loaded });
  }, [loaded, waiting, show]);

  /** One after the other: each is made on the state the one before left. */
  const send = useCallback(
    (ask: () => Promise<{ ok: true; value: { editCount: number } } | { ok: false; error: EditError }>) => {
      setWaiting((count) => count + 1);
      const madeAt = refusals.current;
      queue.current = queue.current.then(async () => {
        // Made on a state that was refused meanwhile: its place may be somewhere else now.
        if (refusals.current !== madeAt) {
          setWaiting((count) => count - 1);
          return;
        }
        const reply = await ask();
        setError(reply.ok ? null : reply.error);
        if (reply.ok && latest.current.kept.editCount < reply.value.editCount)
          show({ kept: { ...latest.current.kept, editCount: reply.value.editCount } });
        if (!reply.ok) {
          refusals.current += 1;
          const fresh = await core.call('sheetDrafts.get', { draftId });
          if (fresh.ok) show({ kept: fresh.value });
        }
        setWaiting((count) => count - 1);
      });
    },
    [core, draftId, show],
  );

  const edit = useCallback(
    (change: SheetEdit) => {
      const { kept: before } = latest.current;
      const changed = applySheetEdit(before.body, change);
      if (!changed.ok) return;
      show({ kept: { ...before, body: changed.value, lastEdit: change } });
      send(() => core.call('sheetDrafts.edit', { draftId, editCount: latest.current.kept.editCount, edit: change }));
    },
    [core, draftId, send, show],
  );

  const leave = useCallback(() => {
    const { pending: typed, kept: before } = latest.current;
    if (typed === null) return;
    show({ pending: null });
    if (JSON.stringify(valueAt(before.body, typed.path)) !== JSON.stringify(typed.value)) edit(asEdit(typed));
  }, [edit, show]);

  const type = useCallback(
    (path: SheetPath, value: Json | undefined) => {
      if (latest.current.pending !== null && !isSamePath(latest.current.pending.path, path)) leave();
      show({ pending: { path, value } });
    },
    [leave, show],
  );

  const undo = useCallback(() => {
    leave();
    send(async () => {
      const reply = await core.call('sheetDrafts.undo', { draftId, editCount: latest.current.kept.editCount });
      const fresh = reply.ok ? await core.call('sheetDrafts.get', { draftId }) : null;
      if (fresh?.ok) show({ kept: fresh.value });
      return reply;
    });
  }, [core, draftId, leave, send, show]);

  const settled = useCallback(async () => {
    leave();
    await queue.current;
    return latest.current.kept.editCount;
  }, [leave]);

  // A window that closes while a box has the keyboard still keeps what is in it.
  useEffect(() => leave, [leave]);

  const body = useMemo(() => withPending(kept.body, pending), [kept.body, pending]);
  const problems = useMemo(() => checkDraft(body), [body]);
  const doubts = useMemo(() => doubtsOf(body), [body]);
  return {
    body,
    problems,
    doubts,
    editCount: kept.editCount,
    canUndo: kept.lastEdit !== null,
    isSaving: waiting > 0,
    error,
    type,
    leave,
    edit,
    undo,
    settled,
  };
}

function asEdit({ path, value }: Pending): SheetEdit {
  return value === undefined ? { kind: 'unset', path } : { kind: 'set', path, value };
}

function withPending(body: Json, pending: Pending | null): Json {
  if (pending === null) return body;
  const changed = applySheetEdit(body, asEdit(pending));
  return changed.ok ? changed.value : body;
}

function isSamePath(a: SheetPath, b: SheetPath): boolean {
  return a.length === b.length && a.every((key, index) => key === b[index]);
}
