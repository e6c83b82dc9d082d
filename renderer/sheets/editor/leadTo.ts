/** Puts the keyboard at a place of the draft as soon as it is on screen, or as near to it as there is a box. */

/** Lists on the way open one inside the other, a frame each; a slow machine takes its time over one. */
const MOST_MS = 2000;

/** A change of part gives the keyboard to the screen first, once it is drawn: the field takes it after that. */
const FRAMES_TO_SETTLE = 3;

/** Answers how to stop looking. */
export function leadTo(path: string, onDone: () => void): () => void {
  const startedMs = performance.now();
  let framesFound = 0;
  let handle = requestAnimationFrame(look);
  function look() {
    const exact = document.querySelector<HTMLElement>(selector(path));
    framesFound = exact === null ? 0 : framesFound + 1;
    if (framesFound < FRAMES_TO_SETTLE && performance.now() - startedMs < MOST_MS) {
      handle = requestAnimationFrame(look);
      return;
    }
    const target = boxIn(exact ?? nearest(path));
    target?.focus();
    target?.scrollIntoView({ block: 'center' });
    onDone();
  }
  return () => cancelAnimationFrame(handle);
}

function nearest(path: string): HTMLElement | null {
  const parts = path.split('.');
  for (let length = parts.length - 1; length > 0; length -= 1) {
    const found = document.querySelector<HTMLElement>(selector(parts.slice(0, length).join('.')));
    if (found !== null) return found;
  }
  return null;
}

function boxIn(element: HTMLElement | null): HTMLElement | null {
  if (element === null || element.matches('input, select, textarea, button, [tabindex]')) return element;
  return element.querySelector<HTMLElement>('input, select, textarea, button');
}

function selector(path: string): string {
  return `[data-path="${CSS.escape(path)}"]`;
}
