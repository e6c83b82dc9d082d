/** The state of a step as shape and word: a closed bar, an open ring, a tick in a ring. Our own drawings on a 20 × 20 grid. */
import type { StepState } from '../../../domain/procedure/progressTypes.ts';

const stroke = { fill: 'none', stroke: 'currentColor', strokeWidth: 2.2, strokeLinecap: 'round' } as const;

export function StepMark({ state }: { readonly state: StepState }) {
  return (
    <svg width="20" height="20" viewBox="0 0 20 20" aria-hidden="true" focusable="false">
      {state === 'locked' ? <path d="M3 6h14v9H3zM6.5 6V3.5h7V6" {...stroke} /> : null}
      {state === 'open' ? <circle cx="10" cy="10" r="7" {...stroke} /> : null}
      {state === 'done' ? <path d="M4 10.5l4 4.5L16.5 5" {...stroke} strokeWidth="3" /> : null}
    </svg>
  );
}

export function stepStateWords(state: StepState): string {
  return { locked: 'locked', open: 'open', done: 'done' }[state];
}
