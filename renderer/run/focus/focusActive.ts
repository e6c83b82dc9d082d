/** Puts the keyboard into the item that is worked on: its main box or its answers; nothing while a dialog is open. */
import type { ItemAddress } from '../../../domain/procedure/progressTypes.ts';

const ROOM_TO_GROW_PX = 120;
const GAP_PX = 8;

export function focusActive(address: ItemAddress): void {
  if (document.querySelector('dialog[open]') !== null) return;
  const card = document.querySelector<HTMLElement>(`[data-card="${address.itemKey}"]`);
  const main = card?.querySelector<HTMLElement>('[data-main]') ?? card;
  if (main === null) focusWhatIsFirst();
  if (main === null || main === undefined) return;
  // The head of the step stays in view as long as the card does.
  const scroller = card?.closest('main');
  const covered = scroller?.querySelector<HTMLElement>('.run-caution')?.offsetHeight ?? 0;
  if (scroller !== null && scroller !== undefined) {
    scroller.scrollTop = 0;
    // Nothing comes to rest below the caution that sticks to the top.
    scroller.style.scrollPaddingBlockStart = `${covered + GAP_PX}px`;
  }
  main.focus({ preventScroll: true });
  if (main instanceof HTMLInputElement) main.select();
  const bottom = scroller?.getBoundingClientRect().bottom ?? window.innerHeight;
  // What the judgement says grows below the box: a card near the bottom is brought up, with the answer just given above it
  // where there is room for both.
  if (card !== null && card.getBoundingClientRect().bottom + ROOM_TO_GROW_PX > bottom) {
    const before = card.closest('li')?.previousElementSibling ?? null;
    const room = (scroller?.clientHeight ?? window.innerHeight) - covered - (before?.clientHeight ?? 0);
    const first = before === null || card.offsetHeight > room ? card : before;
    first.scrollIntoView({ block: 'start' });
  }
  // Far down a tall card, or below the number pad: the box itself counts.
  main.scrollIntoView({ block: 'nearest' });
}

/** A step that is locked has no item to work in: the keyboard goes to what must be done first, unless it is somewhere already. */
function focusWhatIsFirst(): void {
  if (document.activeElement !== document.body) return;
  const first = document.querySelector<HTMLElement>('.run-stop-of-step button, .run-locked button.run-blocker');
  // Below the caution that sticks to the top nothing is seen.
  first?.closest('main')?.scrollTo({ top: 0 });
  first?.focus({ preventScroll: true });
  first?.scrollIntoView({ block: 'nearest' });
}
