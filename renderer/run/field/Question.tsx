/**
 * Holds the keyboard while something is asked about a number: Enter goes on, Escape goes back to the box, Alt with a digit
 * picks. What is typed meanwhile was meant for another box: it is collected, so that it can be said that nobody took it.
 */
import { type FocusEvent, type ReactNode, useEffect, useRef, useState } from 'react';
import { KeyHint } from '../../kit/KeyHint.tsx';
import { isAltKey, plainKey } from '../focus/isAltKey.ts';
import { useKeys } from '../focus/useKeys.ts';

const DIGITS = ['1', '2', '3', '4', '5', '6'];

export function Question({
  goOnWords,
  onPick,
  onGoOn,
  onBack,
  onBlur,
  mustBeRead = false,
  children,
}: {
  /** `leaves it as it is and goes on`; null: there is no going on, and Enter goes back to the box as Escape does. */
  readonly goOnWords: string | null;
  readonly onPick: (index: number) => void;
  readonly onGoOn: (notTaken: string) => void;
  readonly onBack: () => void;
  /** The keyboard leaves it, or something in it. */
  readonly onBlur?: (event: FocusEvent) => void;
  /** Enter after something typed blindly answers nothing yet: whoever typed on has not seen the question. */
  readonly mustBeRead?: boolean;
  readonly children: ReactNode;
}) {
  const notTaken = useRef('');
  const [shown, setShown] = useState('');
  const keys = useKeys<HTMLFieldSetElement>((event) => {
    const digit = DIGITS.findIndex((one) => isAltKey(event, one));
    const typed = plainKey(event);
    if (digit >= 0) onPick(digit);
    else if (event.key === 'Escape' || event.key === 'Backspace') onBack();
    else if (event.key === 'Enter' && goOnWords === null && event.target === event.currentTarget) onBack();
    else if (event.key === 'Enter' && event.target === event.currentTarget) {
      if (mustBeRead && notTaken.current !== '') notTaken.current = '';
      else onGoOn(notTaken.current);
    } else if (typed !== null && event.target === event.currentTarget) {
      notTaken.current += event.key;
      setShown(notTaken.current);
    } else return;
    event.preventDefault();
    event.stopPropagation();
  });
  useEffect(() => {
    keys.current?.focus({ preventScroll: true });
    keys.current?.scrollIntoView({ block: 'nearest' });
  }, [keys]);
  return (
    <fieldset ref={keys} className="run-question" aria-label="Question" tabIndex={-1} onBlur={onBlur}>
      {children}
      <p role="status">
        <KeyHint keys="Enter" /> {goOnWords === null ? 'or' : goOnWords} <KeyHint keys="Esc" /> goes back to the box.
        {shown === '' ? null : <b> “{shown}” is not taken: answer this first.</b>}
      </p>
    </fieldset>
  );
}
