/** The frame of a form: says when something typed earlier was brought back, leads to the first wrong field, holds the button. */
import { Button, Group, Stack } from '@mantine/core';
import { type ReactNode, type RefObject, useEffect, useLayoutEffect, useRef } from 'react';
import { Note } from '../kit/Note.tsx';
import type { DraftForm } from './useDraftForm.ts';
import { useKeepKeyboard } from './useKeepKeyboard.ts';

export function DraftFormFrame<V extends object>({
  form,
  submitLabel,
  failure,
  beside,
  onLeave,
  children,
}: {
  readonly form: DraftForm<V>;
  readonly submitLabel: string;
  /** What the core refused, other than single fields. */
  readonly failure?: ReactNode;
  /** More beside the button. */
  readonly beside?: ReactNode;
  /** Closes the form as if it had not been opened; what is typed stays as a draft. */
  readonly onLeave?: () => void;
  readonly children: ReactNode;
}) {
  const element = useRef<HTMLFormElement>(null);
  const { refusals } = form;
  useLeadIn(element, onLeave !== undefined);
  const { noteClick } = useKeepKeyboard(element);
  useEffect(() => {
    if (refusals === 0) return;
    element.current?.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus();
  }, [refusals]);
  const wrong = Object.keys(form.errors).length;
  return (
    <form
      ref={element}
      noValidate
      onClickCapture={noteClick}
      onKeyDown={(event) => {
        if (event.key !== 'Enter' || !(event.ctrlKey || event.metaKey)) return;
        event.preventDefault();
        event.currentTarget.requestSubmit();
      }}
      onSubmit={(event) => {
        event.preventDefault();
        event.stopPropagation();
        void form.submit();
      }}
    >
      <Stack gap="md">
        <DraftNote form={form} />
        {children}
        {failure}
        {wrong > 0 ? (
          <Note tone="ember" isSpoken>
            {wrong === 1 ? 'One field needs another look.' : `${wrong} fields need another look.`} Nothing was lost.
            <UnplacedErrors form={form} />
          </Note>
        ) : null}
        <Group gap="sm">
          <Button type="submit" loading={form.isBusy}>
            {submitLabel}
          </Button>
          {onLeave === undefined ? null : (
            <Button variant="default" onClick={onLeave}>
              Leave it
            </Button>
          )}
          {beside}
        </Group>
      </Stack>
    </form>
  );
}

/**
 * Puts the keyboard into the field a form begins with, unless the keyboard is somewhere on purpose. A form that somebody
 * opened takes it into its first field, and gives it back to what opened it, or to the screen where that is gone. One that
 * was sent and makes way for the next hands it on.
 */
function useLeadIn(element: RefObject<HTMLFormElement | null>, isOpened: boolean): void {
  const opened = useRef(isOpened);
  // In the step that takes the form out of the page, else the browser has taken the keyboard from it already.
  useLayoutEffect(() => {
    const form = element.current;
    const before = document.activeElement instanceof HTMLElement ? document.activeElement : document.body;
    const isNowhere = before === document.body || before.tagName === 'MAIN';
    if (isNowhere || (opened.current && before.tagName === 'BUTTON')) {
      const first = form?.querySelector<HTMLElement>('[data-autofocus]');
      const any = opened.current ? form?.querySelector<HTMLElement>('input, select, textarea') : null;
      (first ?? any)?.focus();
    }
    return () => {
      if (form?.contains(document.activeElement) !== true) return;
      if (!opened.current) return handOn(ancestorsOf(form));
      const back = before.isConnected ? before : document.querySelector('main');
      back?.focus({ preventScroll: true });
    };
  }, [element]);
}

/** To the button of the form that came in its place, and not into a field: the next key may be a shortcut. */
function handOn(places: readonly Element[]): void {
  requestAnimationFrame(() => {
    if (document.activeElement !== document.body) return;
    const place = places.find((one) => one.isConnected);
    if (place === undefined) return;
    const next = place.querySelector<HTMLElement>('form button[type="submit"]') ?? place.closest('main');
    next?.focus({ preventScroll: true });
  });
}

/** Of this screen alone, the nearest first: on the next one the keyboard begins anew. */
function ancestorsOf(form: HTMLElement): readonly Element[] {
  const above: Element[] = [];
  for (let one = form.parentElement; one?.closest('.lo-screen'); one = one.parentElement) above.push(one);
  return above;
}

function DraftNote<V extends object>({ form }: { readonly form: DraftForm<V> }) {
  if (form.draft === 'none') return null;
  return (
    <Note
      tone={form.draft === 'record-changed' ? 'caution' : 'plain'}
      isSpoken
      action={
        <Button variant="default" onClick={form.discardDraft}>
          Throw it away
        </Button>
      }
    >
      {form.draft === 'record-changed'
        ? 'This is what you typed earlier; the record on file has changed since. Compare before saving.'
        : 'This is what you typed earlier; it is not saved yet.'}
    </Note>
  );
}

/** Complaints about something that has no field of its own on this form must still be read somewhere. */
function UnplacedErrors<V extends object>({ form }: { readonly form: DraftForm<V> }) {
  const unplaced = Object.entries(form.errors).filter(([path]) => !((path.split('.')[0] ?? '') in form.values));
  if (unplaced.length === 0) return null;
  return (
    <ul style={{ margin: 0 }}>
      {unplaced.map(([path, why]) => (
        <li key={path}>
          {path || 'form'}: {why}
        </li>
      ))}
    </ul>
  );
}
