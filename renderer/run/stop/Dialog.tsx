/** A dialog over the whole screen that keeps the keyboard, begun at `data-first`; Escape is the caller's to answer. */
import { type ReactNode, useEffect, useRef } from 'react';

export function Dialog({
  label,
  tone = 'plain',
  onEscape,
  children,
}: {
  readonly label: string;
  readonly tone?: 'plain' | 'ember';
  readonly onEscape: () => void;
  readonly children: ReactNode;
}) {
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    const element = dialog.current;
    const before = document.activeElement;
    if (element !== null && !element.open) {
      element.showModal();
      element.querySelector<HTMLElement>('[data-first]')?.focus();
    }
    return () => {
      element?.close();
      if (before instanceof HTMLElement && before.isConnected) before.focus({ preventScroll: true });
    };
  }, []);
  return (
    <dialog
      ref={dialog}
      className="run-dialog"
      data-tone={tone}
      aria-label={label}
      onCancel={(event) => {
        event.preventDefault();
        onEscape();
      }}
    >
      {children}
    </dialog>
  );
}
