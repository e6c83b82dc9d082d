/** Puts text into the box that has the focus, as if it had been typed there. */
export function typeInto(element: Element | null, text: string): void {
  if (text === '' || !(element instanceof HTMLInputElement || element instanceof HTMLTextAreaElement)) return;
  setText(element, element.value + text);
}

/** A letter in place of what is selected, at the cursor; null takes the selection or the letter before the cursor away. */
export function editBox(box: HTMLInputElement, letter: string | null): void {
  const to = box.selectionEnd ?? box.value.length;
  const start = box.selectionStart ?? to;
  const from = letter === null && start === to ? Math.max(0, start - 1) : start;
  setText(box, box.value.slice(0, from) + (letter ?? '') + box.value.slice(to));
  const cursor = from + (letter?.length ?? 0);
  box.setSelectionRange(cursor, cursor);
}

function setText(element: HTMLInputElement | HTMLTextAreaElement, text: string): void {
  const prototype = element instanceof HTMLInputElement ? HTMLInputElement.prototype : HTMLTextAreaElement.prototype;
  // React listens to the native setter's value: assigning to `value` would go unnoticed.
  Object.getOwnPropertyDescriptor(prototype, 'value')?.set?.call(element, text);
  element.dispatchEvent(new Event('input', { bubbles: true }));
}
