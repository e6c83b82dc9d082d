/** A key that puts the keyboard into the first thing to fill in or press here: what is far down a screen is one press away. */
import { type ReactNode, useRef } from 'react';
import { useShortcut } from './Shortcuts.tsx';

export function KeyTo({
  keys,
  label,
  children,
}: {
  readonly keys: string;
  readonly label: string;
  readonly children: ReactNode;
}) {
  const here = useRef<HTMLDivElement>(null);
  useShortcut(keys, label, () => {
    const first = here.current?.querySelector<HTMLElement>(
      'input:not([disabled]), select, textarea, button:not([disabled])',
    );
    first?.scrollIntoView({ block: 'nearest' });
    first?.focus();
  });
  return <div ref={here}>{children}</div>;
}
