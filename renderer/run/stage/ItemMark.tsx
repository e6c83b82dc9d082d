/** The state of an item as a shape, with its word for those who hear the screen. */
import type { ItemState } from '../../../domain/procedure/progressTypes.ts';

const WORDS: Record<ItemState, string> = {
  open: 'open',
  waiting: 'comes later',
  running: 'running',
  answered: 'done',
  'not-possible': 'not possible',
  'blocked-by-finding': 'blocked',
};

const stroke = { fill: 'none', stroke: 'currentColor', strokeWidth: 2.2, strokeLinecap: 'round' } as const;

export function ItemMark({ state }: { readonly state: ItemState }) {
  return (
    <span className="run-mark" data-state={state}>
      <svg width="20" height="20" viewBox="0 0 20 20" role="img" aria-label={WORDS[state]}>
        {state === 'open' ? <circle cx="10" cy="10" r="6.5" {...stroke} /> : null}
        {state === 'waiting' ? <circle cx="10" cy="10" r="6.5" {...stroke} strokeDasharray="2.5 3" /> : null}
        {state === 'running' ? <path d="M10 3.5a6.5 6.5 0 1 1-6.5 6.5M10 6v4.4l3 2" {...stroke} /> : null}
        {state === 'answered' ? <path d="M4 10.5l4 4.5L16.5 5" {...stroke} strokeWidth="3" /> : null}
        {state === 'not-possible' ? <path d="M4 10h12" {...stroke} strokeWidth="3" /> : null}
        {state === 'blocked-by-finding' ? <path d="M10 3v8.5M10 16v.6" {...stroke} strokeWidth="3" /> : null}
      </svg>
    </span>
  );
}
