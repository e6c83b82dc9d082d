/** A signature that is being drawn: kept like a typed draft until it is under a name, so that nothing on the way loses it. */
import { useEffect, useRef, useState } from 'react';
import type { ItemAddress } from '../../../domain/procedure/progressTypes.ts';
import { useCore } from '../../operations/CoreAccess.tsx';
import { clearDraft, readDraft, writeDraft } from '../field/drafts.ts';
import { useRun } from '../state/RunContext.ts';
import { signaturePicture } from './SignaturePad.tsx';
import { isSignature, type Strokes } from './strokes.ts';
import { putPhoto } from './takePhotos.ts';

export type KeptDrawing =
  | { readonly ok: true; readonly attachmentId: string | null }
  | { readonly ok: false; readonly why: string };

export type Drawing = {
  readonly strokes: Strokes;
  readonly change: (change: (strokes: Strokes) => Strokes) => void;
  /** Puts it into the store, before the name that points to it; null: nothing was drawn. */
  readonly keep: () => Promise<KeptDrawing>;
  /** Once it is under a name; gone on with meanwhile, it stays, whole. */
  readonly forget: () => void;
};

const BOX = 'drawing';

export function useDrawing(address: ItemAddress, label: string): Drawing {
  const { view, unsaved } = useRun();
  const core = useCore();
  const key = { runId: view.runId, itemKey: address.itemKey, box: BOX };
  const [strokes, setStrokes] = useState<Strokes>(() => JSON.parse(readDraft(sessionStorage, key) ?? '[]') as Strokes);
  const latest = useRef({ strokes, unsaved, address, label });
  const kept = useRef<Strokes>([]);
  useEffect(() => {
    latest.current = { strokes, unsaved, address, label };
  });
  useEffect(
    () => () => {
      const { strokes: left, unsaved: list, address: at, label: words } = latest.current;
      if (isSignature(left)) list.add({ ...at, box: BOX, label: words, why: 'Drawn, and not signed with it yet.' });
    },
    [],
  );
  const show = (next: Strokes) => {
    latest.current = { ...latest.current, strokes: next };
    if (next.length === 0) {
      clearDraft(sessionStorage, key);
      unsaved.remove({ itemKey: address.itemKey, box: BOX });
    } else writeDraft(sessionStorage, key, JSON.stringify(next));
    setStrokes(next);
  };
  return {
    strokes,
    change: (how) => show(how(latest.current.strokes)),
    async keep() {
      const drawn = latest.current.strokes;
      kept.current = drawn;
      if (!isSignature(drawn)) return { ok: true, attachmentId: null };
      const picture = await signaturePicture(drawn);
      if (picture === null) return { ok: false, why: 'The drawing could not be made into a picture.' };
      const outcome = await putPhoto(picture, core.putFile);
      return outcome.ok ? outcome : { ok: false, why: outcome.why };
    },
    forget: () => {
      if (latest.current.strokes === kept.current) show([]);
    },
  };
}
