/** Text in place of what is selected, at the cursor; null takes the selection or the letter before the cursor away. */
export function editBox(box: HTMLInputElement, typed: string | null): void {
  const to = box.selectionEnd ?? box.value.length;
  const start = box.selectionStart ?? to;
  const from = typed === null && start === to ? Math.max(0, start - 1) : start;
  setText(box, box.value.slice(0, from) + (typed ?? '') + box.value.slice(to));
  const cursor = from + (typed?.length ?? 0);
  box.setSelectionRange(cursor, cursor);
}

function setText(box: HTMLInputElement, text: string): void {
  // React listens to the native setter's value: assigning to `value` would go unnoticed.
  Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value')?.set?.call(box, text);
  box.dispatchEvent(new Event('input', { bubbles: true }));
}
