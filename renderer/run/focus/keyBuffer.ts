/**
 * Keys pressed between an answer or Enter and the reply of the save. The next box is not on screen yet, so they must not
 * run into the old one; they are kept in order, Enter included, and the caller decides what becomes of them.
 */
export type KeyBuffer = {
  readonly begin: () => void;
  /** Adds keys as if they were pressed now; false when nothing is being held back. */
  readonly hold: (keys: readonly string[]) => boolean;
  /** Ends the buffering and gives back what was pressed meanwhile: characters and `Enter`. */
  readonly end: () => readonly string[];
};

export function makeKeyBuffer(target: Pick<EventTarget, 'addEventListener' | 'removeEventListener'>): KeyBuffer {
  let depth = 0;
  let held: string[] = [];

  function listen(event: Event): void {
    const { key, ctrlKey, metaKey, altKey } = event as KeyboardEvent;
    // Function keys, F8 above all, are never held back.
    if (ctrlKey || metaKey || altKey || (key.length !== 1 && key !== 'Backspace' && key !== 'Enter')) return;
    event.preventDefault();
    event.stopPropagation();
    if (key !== 'Backspace') held.push(key);
    else if (held.at(-1) !== 'Enter') held.pop();
  }

  return {
    begin() {
      depth += 1;
      if (depth === 1) target.addEventListener('keydown', listen, { capture: true });
    },
    hold(keys) {
      if (depth === 0) return false;
      held.push(...keys);
      return true;
    },
    end() {
      depth = Math.max(0, depth - 1);
      if (depth > 0) return [];
      target.removeEventListener('keydown', listen, { capture: true });
      const keys = held;
      held = [];
      return keys;
    },
  };
}

/** The characters alone: what a person would say they had typed. */
export function typedText(keys: readonly string[]): string {
  return keys.filter((key) => key !== 'Enter').join('');
}
