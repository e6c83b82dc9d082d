/** Whether what was typed has reached the store: said beside the field, before the person moves on. */
export type SaveState =
  | { readonly kind: 'idle' }
  | { readonly kind: 'saving' }
  | { readonly kind: 'saved' }
  | { readonly kind: 'not-saved'; readonly why: string };

export function FieldSaved({ state }: { readonly state: SaveState }) {
  return (
    <span role="status" aria-live="polite" data-save={state.kind}>
      {wordsOf(state)}
    </span>
  );
}

function wordsOf(state: SaveState) {
  switch (state.kind) {
    case 'idle':
      return null;
    case 'saving':
      return <span className="lo-faint">saving …</span>;
    case 'saved':
      return <span style={{ color: 'var(--lo-fir)' }}>saved</span>;
    case 'not-saved':
      return <strong style={{ color: 'var(--lo-ember)' }}>not saved: {state.why}</strong>;
  }
}
