/**
 * A button that is busy is switched off, and the browser takes the keyboard from what is switched off. When the button is there
 * again and nothing else has taken the keyboard meanwhile, it gets it back.
 */
import { useEffect } from 'react';

export function useBusyFocus(): void {
  useEffect(() => {
    let pressed: HTMLElement | null = null;
    const onClick = ({ target }: MouseEvent) => {
      pressed = target instanceof Element ? target.closest('button') : null;
    };
    const onFocus = ({ target }: FocusEvent) => {
      if (target !== pressed) pressed = null;
    };
    const observer = new MutationObserver(() => {
      if (pressed === null || pressed.hasAttribute('disabled')) return;
      if (document.activeElement === document.body && pressed.isConnected) pressed.focus({ preventScroll: true });
    });
    document.addEventListener('click', onClick, true);
    document.addEventListener('focusin', onFocus);
    observer.observe(document.body, { subtree: true, attributes: true, attributeFilter: ['disabled'] });
    return () => {
      document.removeEventListener('click', onClick, true);
      document.removeEventListener('focusin', onFocus);
      observer.disconnect();
    };
  }, []);
}
