/** Whether Alt and this key were pressed. By the key's place: with Alt some layouts give other letters. */
import type { KeyboardEvent as ReactKeyboardEvent } from 'react';

export function isAltKey(event: KeyboardEvent | ReactKeyboardEvent, key: string): boolean {
  if (!event.altKey || event.ctrlKey || event.metaKey) return false;
  const code = /^[A-Z]$/.test(key) ? `Key${key}` : /^\d$/.test(key) ? `Digit${key}` : key;
  return event.code === code || (/^\d$/.test(key) && event.code === `Numpad${key}`);
}

/** A plain character key, in no text box: what answers a question. */
export function plainKey(event: KeyboardEvent): string | null {
  if (event.altKey || event.ctrlKey || event.metaKey || event.repeat || isTextBox(event.target)) return null;
  return event.key.length === 1 ? event.key.toLowerCase() : null;
}

export function isTextBox(target: EventTarget | null): boolean {
  return target instanceof HTMLElement && ['INPUT', 'TEXTAREA', 'SELECT'].includes(target.tagName);
}
