/** Puts text into the box that has the focus, as if it had been typed there. */
export function typeInto(element: Element | null, text: string): void {
  if (text === '' || !(element instanceof HTMLInputElement || element instanceof HTMLTextAreaElement)) return;
  const prototype = element instanceof HTMLInputElement ? HTMLInputElement.prototype : HTMLTextAreaElement.prototype;
  // React listens to the native setter's value: assigning to `value` would go unnoticed.
  Object.getOwnPropertyDescriptor(prototype, 'value')?.set?.call(element, element.value + text);
  element.dispatchEvent(new Event('input', { bubbles: true }));
}
