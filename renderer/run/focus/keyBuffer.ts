/**
 * Keys pressed between an answer or Enter and the reply of the save. The next box is not on screen yet, so they must not
 * run into the old one; the caller decides what becomes of them.
 */
export type KeyBuffer = {
  readonly begin: () => void;
  /** Ends the buffering and gives back what was typed meanwhile. */
  readonly end: () => string;
};

export function makeKeyBuffer(target: Pick<EventTarget, 'addEventListener' | 'removeEventListener'>): KeyBuffer {
  let depth = 0;
  let held = '';

  function hold(event: Event): void {
    const { key, ctrlKey, metaKey, altKey } = event as KeyboardEvent;
    // Function keys, F8 above all, are never held back.
    if (ctrlKey || metaKey || altKey || (key.length !== 1 && key !== 'Backspace' && key !== 'Enter')) return;
    event.preventDefault();
    event.stopPropagation();
    if (key === 'Backspace') held = held.slice(0, -1);
    else if (key !== 'Enter') held += key;
  }

  return {
    begin() {
      depth += 1;
      if (depth > 1) return;
      held = '';
      target.addEventListener('keydown', hold, { capture: true });
    },
    end() {
      depth = Math.max(0, depth - 1);
      if (depth > 0) return '';
      target.removeEventListener('keydown', hold, { capture: true });
      const text = held;
      held = '';
      return text;
    },
  };
}
