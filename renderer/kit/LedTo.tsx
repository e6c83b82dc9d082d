/** Takes the keyboard to the first thing in it as it appears: for what replaces the button that was just pressed. */
import { type ReactNode, useEffect, useRef } from 'react';

export function LedTo({ children }: { readonly children: ReactNode }) {
  const element = useRef<HTMLDivElement>(null);
  useEffect(() => {
    element.current?.querySelector<HTMLElement>('a[href], button:not([disabled]), input')?.focus();
  }, []);
  return <div ref={element}>{children}</div>;
}
