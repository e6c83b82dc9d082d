/** Large keys for fingers and gloves: they type into the number box that has the keyboard, as the keyboard would. */
import { useEffect, useRef, useState } from 'react';
import { KeyHint } from '../../kit/KeyHint.tsx';
import { editBox } from '../focus/editBox.ts';

const ROWS = [
  ['7', '8', '9', '>'],
  ['4', '5', '6', '−'],
  ['1', '2', '3', '⌫'],
  ['0', '.', 'Enter'],
] as const;
const MEMORY = 'lightoff.number-pad';

export function NumberPad() {
  const [isShown, setIsShown] = useState(wantsPad);
  const place = useRef<HTMLDivElement>(null);
  const [wasAsked, setWasAsked] = useState(false);
  const toggle = () => {
    localStorage.setItem(MEMORY, isShown ? 'no' : 'yes');
    setIsShown(!isShown);
    setWasAsked(true);
  };
  // The button stands at the end of the card: the box it types into comes back into view.
  useEffect(() => {
    if (!wasAsked || !isShown) return;
    const card = place.current?.closest('[data-card]') ?? null;
    const box = firstBox(card);
    box?.focus({ preventScroll: true });
    box?.scrollIntoView({ block: 'center' });
  }, [wasAsked, isShown]);
  return (
    <div ref={place} className="run-pad-place">
      <button type="button" className="run-quiet-button" aria-expanded={isShown} onClick={toggle}>
        <span>{isShown ? 'Hide the number pad' : 'Number pad'}</span>
      </button>
      {isShown ? (
        <fieldset className="run-pad" aria-label="Number pad">
          {ROWS.flat().map((key) => (
            <button
              key={key}
              type="button"
              className="run-pad-key"
              data-key={key}
              data-wide={key === 'Enter' || undefined}
              aria-label={key === '⌫' ? 'Erase the last' : key === '−' ? 'Minus' : undefined}
              tabIndex={-1}
              // The box must not lose the keyboard: leaving it would save half a number.
              onPointerDown={(event) => event.preventDefault()}
              onClick={(event) => press(key, event.currentTarget)}
            >
              {key === 'Enter' ? <KeyHint keys="Enter" /> : key}
            </button>
          ))}
        </fieldset>
      ) : null}
    </div>
  );
}

/** Wanted where there are only fingers, unless somebody has said otherwise on this laptop. */
function wantsPad(): boolean {
  const said = localStorage.getItem(MEMORY);
  return said === null ? window.matchMedia('(pointer: coarse)').matches : said === 'yes';
}

function press(key: (typeof ROWS)[number][number], pad: HTMLElement): void {
  const card = pad.closest('[data-card]');
  const box = card?.querySelector<HTMLInputElement>('input.run-number:focus, input.run-text:focus') ?? firstBox(card);
  if (box === null) return;
  if (document.activeElement !== box) box.focus();
  if (key === 'Enter')
    box.dispatchEvent(new KeyboardEvent('keydown', { key: 'Enter', bubbles: true, cancelable: true }));
  else editBox(box, key === '⌫' ? null : key);
}

function firstBox(card: Element | null): HTMLInputElement | null {
  return card?.querySelector<HTMLInputElement>('input.run-number[data-main], input.run-number') ?? null;
}
