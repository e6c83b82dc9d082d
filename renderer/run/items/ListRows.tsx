/** A list that answers an item: what is on it, a line to add to it, or that there is nothing. One key says none. */
import type { ReactNode } from 'react';
import type { StepItem } from '../../../domain/procedure/modelSheet.ts';
import { NONE_ANSWER } from '../../../domain/procedure/progress/listProgress.ts';
import type { ItemAddress } from '../../../domain/procedure/progressTypes.ts';
import { FieldSaved, type SaveState } from '../../kit/FieldSaved.tsx';
import { KeyHint } from '../../kit/KeyHint.tsx';
import { plainKey } from '../focus/isAltKey.ts';
import { useKeys } from '../focus/useKeys.ts';
import { newestAnswer } from '../stage/answerText.ts';
import { useRun } from '../state/RunContext.ts';
import { useItemWrites } from '../state/useItemWrites.ts';
import './listRows.css';

export function ListRows({
  item,
  here,
  state,
  noneWords,
  rows,
  onAdd,
  isBlank,
  children,
}: {
  readonly item: StepItem;
  readonly here: ItemAddress;
  readonly state: SaveState;
  readonly noneWords: string;
  readonly rows: readonly { readonly rowId: string; readonly words: string }[];
  readonly onAdd: () => Promise<void>;
  /** Nothing stands in the line yet: Enter then goes on, once something is on the list. */
  readonly isBlank: boolean;
  /** The boxes of the line that is added. */
  readonly children: ReactNode;
}) {
  const { view, saveAndGoOn } = useRun();
  const { ref, send, answer } = useItemWrites(here);
  const isNone = rows.length === 0 && newestAnswer(view.record, item.key)?.value === NONE_ANSWER;
  const none = () => void saveAndGoOn(here, () => answer(NONE_ANSWER, null), 'answered');
  const goOn = () => void saveAndGoOn(here, async () => true);
  const keys = useKeys<HTMLFieldSetElement>((event) => {
    const isOwn = event.target === event.currentTarget;
    if (plainKey(event) === '0' && rows.length === 0) none();
    else if (event.key === 'Enter' && isOwn && (rows.length > 0 || isNone)) goOn();
    else if (event.key === 'Enter' && rows.length > 0 && isBlank && !(event.target instanceof HTMLButtonElement))
      goOn();
    else return;
    event.preventDefault();
  });
  return (
    <fieldset ref={keys} className="run-list" aria-labelledby={`label-${item.key}`} tabIndex={-1} data-main>
      {rows.length === 0 ? (
        <button type="button" className="run-answer" aria-pressed={isNone} aria-keyshortcuts="0" onClick={none}>
          <kbd className="lo-key">0</kbd>
          <span>{noneWords}</span>
          {isNone ? <span className="run-answer-given">chosen</span> : null}
        </button>
      ) : (
        <ul className="run-list-rows">
          {rows.map(({ rowId, words }) => (
            <li key={rowId}>
              {words}
              <button
                type="button"
                className="run-button"
                aria-label={`Take away: ${words}`}
                onClick={() => void send('visits.removeRow', { ...ref, rowId })}
              >
                Take away
              </button>
            </li>
          ))}
        </ul>
      )}
      <form
        className="run-list-line"
        onSubmit={(event) => {
          event.preventDefault();
          void onAdd();
        }}
      >
        {children}
        <button type="submit" className="run-button">
          Add it {isBlank && rows.length > 0 ? null : <KeyHint keys="Enter" />}
        </button>
        <FieldSaved state={state} />
      </form>
      {rows.length > 0 ? (
        <button type="button" className="run-button run-button-main" onClick={goOn}>
          Go on {isBlank ? <KeyHint keys="Enter" /> : null}
        </button>
      ) : null}
    </fieldset>
  );
}
