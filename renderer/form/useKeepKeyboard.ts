/** Where the keyboard goes when what was pressed in a form is gone after it: to the field that is nearest now. */
import { type RefObject, useLayoutEffect, useRef } from 'react';

const STOPS = 'input, select, textarea, button, a[href], summary';

/** `noteClick` as the form's `onClickCapture`. A row taken out or a suggestion taken over goes from under the keyboard. */
export function useKeepKeyboard(form: RefObject<HTMLElement | null>): { readonly noteClick: () => void } {
  const pressed = useRef<{ readonly element: Element; readonly at: number } | null>(null);
  // After every drawing: which of them takes the element away is not known before.
  useLayoutEffect(() => {
    if (pressed.current === null || pressed.current.element.isConnected) return;
    const { at } = pressed.current;
    pressed.current = null;
    if (document.activeElement !== document.body) return;
    const stops = stopsIn(form.current);
    // Never a button: the second of two quick presses would take out the next row too.
    (stops.slice(at).find(isField) ?? stops.slice(0, at).findLast(isField))?.focus();
  });
  return {
    noteClick: () => {
      const element = document.activeElement;
      const at = element instanceof HTMLElement ? stopsIn(form.current).indexOf(element) : -1;
      pressed.current = element === null || at < 0 ? null : { element, at };
    },
  };
}

function isField({ tagName }: HTMLElement): boolean {
  return tagName === 'INPUT' || tagName === 'SELECT' || tagName === 'TEXTAREA';
}

/** What Tab stops at, in its order. */
function stopsIn(form: HTMLElement | null): readonly HTMLElement[] {
  return [...(form?.querySelectorAll<HTMLElement>(STOPS) ?? [])].filter(({ tabIndex }) => tabIndex >= 0);
}
