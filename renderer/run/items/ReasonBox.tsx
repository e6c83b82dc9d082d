/** One line of words with a few ready ones a key away; saved on Enter. */
import { type ReactNode, useEffect, useId, useRef } from 'react';
import type { ItemAddress } from '../../../domain/procedure/progressTypes.ts';
import { FieldSaved } from '../../kit/FieldSaved.tsx';
import { KeyHint } from '../../kit/KeyHint.tsx';
import { type SaveOutcome, useField } from '../field/useField.ts';
import { isAltKey } from '../focus/isAltKey.ts';
import { useRun } from '../state/RunContext.ts';

export function ReasonBox({
  address,
  box,
  label,
  stored,
  readyWords = [],
  save,
  mayStayEmpty = false,
  isFocused = false,
  onCancel,
  children,
}: {
  readonly address: ItemAddress;
  readonly box: string;
  readonly label: string;
  readonly stored: string;
  readonly readyWords?: readonly string[];
  readonly save: (text: string) => Promise<SaveOutcome>;
  readonly mayStayEmpty?: boolean;
  /** Takes the keyboard as soon as it appears. */
  readonly isFocused?: boolean;
  readonly onCancel?: () => void;
  readonly children?: ReactNode;
}) {
  const { saveAndGoOn } = useRun();
  const id = useId();
  const input = useRef<HTMLInputElement>(null);
  const field = useField({ address, box, label, stored, save });
  useEffect(() => {
    if (isFocused) input.current?.focus();
  }, [isFocused]);

  const goOn = () => {
    if (field.text.trim() === '' && !mayStayEmpty) return;
    void saveAndGoOn(address, field.commit);
  };
  const take = (words: string) => {
    field.type(words);
    void saveAndGoOn(address, field.commit);
  };
  return (
    <div className="run-reason">
      <label htmlFor={id}>{label}</label>
      <div className="run-box-row">
        <input
          id={id}
          ref={input}
          className="run-text"
          type="text"
          autoComplete="off"
          maxLength={300}
          value={field.text}
          onChange={(event) => field.type(event.currentTarget.value)}
          onBlur={() => void field.commit()}
          onKeyDown={(event) => {
            const ready = readyWords.findIndex((_, index) => isAltKey(event, String(index + 1)));
            const words = readyWords[ready];
            if (words !== undefined) take(words);
            else if (event.key === 'Enter') goOn();
            else if (event.key === 'Escape' && onCancel !== undefined) onCancel();
            else return;
            event.preventDefault();
            event.stopPropagation();
          }}
        />
        <FieldSaved state={field.state} />
      </div>
      {readyWords.length === 0 ? null : (
        <div className="run-ready-words">
          {readyWords.map((words, index) => (
            <button key={words} type="button" className="run-button" onClick={() => take(words)}>
              <KeyHint keys={`Alt+${index + 1}`} /> {words}
            </button>
          ))}
        </div>
      )}
      {children}
    </div>
  );
}
