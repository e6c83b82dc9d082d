/** Hears the keys pressed anywhere inside an element: for answers that one key gives. */
import { type RefObject, useEffect, useRef } from 'react';

export function useKeys<E extends HTMLElement>(onKey: (event: KeyboardEvent) => void): RefObject<E | null> {
  const element = useRef<E>(null);
  const latest = useRef(onKey);
  useEffect(() => {
    latest.current = onKey;
  });
  useEffect(() => {
    const heard = element.current;
    const listen = (event: KeyboardEvent) => latest.current(event);
    heard?.addEventListener('keydown', listen);
    return () => heard?.removeEventListener('keydown', listen);
  }, []);
  return element;
}
