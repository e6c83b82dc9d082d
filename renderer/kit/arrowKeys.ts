/** Arrow keys along a list of links or buttons, for lists that are long to tab through. Tab keeps working. */
import type { KeyboardEvent } from 'react';

const STOPS = 'a[href], button:not([disabled])';

/** `stops`: which of what is in the list the arrows lead to. */
export function moveByArrows(event: KeyboardEvent<HTMLElement>, stops = STOPS): void {
  const list = [...event.currentTarget.querySelectorAll<HTMLElement>(stops)];
  const to = stopAfter(event.key, list.indexOf(document.activeElement as HTMLElement), list.length);
  if (to === null) return;
  event.preventDefault();
  list[to]?.focus();
}

/** Index of the next stop; `at` -1: none of them has the keyboard. null: the key leads nowhere. */
export function stopAfter(key: string, at: number, count: number): number | null {
  if (count === 0) return null;
  switch (key) {
    case 'ArrowDown':
      return Math.min(count - 1, at + 1);
    case 'ArrowUp':
      return at <= 0 ? null : at - 1;
    case 'Home':
      return 0;
    case 'End':
      return count - 1;
    default:
      return null;
  }
}
