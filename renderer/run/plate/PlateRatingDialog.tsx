/** The rated input as the plate has it, with its unit and what it is rated on: kept in the appliance's file. */
import { useId, useState } from 'react';
import { entryUnits } from '../../../domain/quantity/entryUnits.ts';
import { formatNumber } from '../../../domain/quantity/formatQuantity.ts';
import { parseTyped } from '../../../domain/quantity/parseTyped.ts';
import { FieldSaved, type SaveState } from '../../kit/FieldSaved.tsx';
import { KeyHint } from '../../kit/KeyHint.tsx';
import { useKept } from '../../kit/useKept.ts';
import { useEntryUnit } from '../field/useEntryUnit.ts';
import { isAltKey } from '../focus/isAltKey.ts';
import { AnswerButton } from '../items/AnswerButton.tsx';
import { useRun } from '../state/RunContext.ts';
import { Dialog } from '../stop/Dialog.tsx';
import { saveErrorWords } from '../words/saveErrorWords.ts';

const BASES = ['gross', 'net'] as const;
const BASIS_WORDS = { gross: 'Gross (usual in North America)', net: 'Net (usual in Europe)' } as const;

export function PlateRatingDialog({ onClose }: { readonly onClose: () => void }) {
  const { view, write, unitSystem } = useRun();
  const id = useId();
  const [typed, setTyped] = useKept(`plate-rating.${view.runId}`, '');
  const [basis, setBasis] = useState<(typeof BASES)[number]>(view.sheet.appliance.ratedInputBasis);
  const { unit, switchUnit } = useEntryUnit('ratedInputKw', unitSystem, null);
  const [state, setState] = useState<SaveState>({ kind: 'idle' });
  const read = parseTyped('ratedInputKw', typed, unit.symbol);
  const save = async () => {
    setState({ kind: 'saving' });
    const { visitId, runId } = view;
    const input = { visitId, runId, typedText: typed, typedUnit: unit.symbol, basis };
    const reply = await write('visits.recordPlateRating', input);
    if (!reply.ok) {
      setState({ kind: 'not-saved', why: saveErrorWords(reply.error) });
      return;
    }
    setTyped('');
    onClose();
  };
  return (
    <Dialog label="Rated input on the plate" onEscape={onClose}>
      <div className="run-stop-head">
        <h2>Rated input on the plate</h2>
        <button type="button" className="run-button" onClick={onClose}>
          Back to the run <KeyHint keys="Esc" />
        </button>
      </div>
      <p>
        The largest input (heat input, not output) of {view.record.appliance.serial}, with the unit beside it as on the
        plate. The licence is held against it.
      </p>
      <form
        className="run-make-safe"
        onKeyDown={(event) => {
          const at = ['1', '2'].findIndex((key) => isAltKey(event, key));
          const chosen = BASES[at];
          if (chosen !== undefined) setBasis(chosen);
          else if (isAltKey(event, 'U')) switchUnit();
          else return;
          event.preventDefault();
        }}
        onSubmit={(event) => {
          event.preventDefault();
          void save();
        }}
      >
        <label htmlFor={id}>Rated input</label>
        <div className="run-box-row">
          <input
            id={id}
            className="run-number"
            data-first
            type="text"
            autoComplete="off"
            spellCheck={false}
            maxLength={60}
            required
            value={typed}
            onChange={(event) => {
              setState({ kind: 'idle' });
              setTyped(event.currentTarget.value);
            }}
          />
          <button
            type="button"
            className="run-unit-button"
            aria-label={`Unit ${unit.symbol}, switch`}
            aria-keyshortcuts="Alt+U"
            onClick={switchUnit}
          >
            {unit.symbol}
          </button>
          <span role="status">{read.ok ? bothUnits(read.value.valueOwn) : ''}</span>
        </div>
        <fieldset className="run-answers" data-many aria-label="Rated on which heating value">
          {BASES.map((one, index) => (
            <AnswerButton key={one} answerKey={`Alt+${index + 1}`} isGiven={basis === one} onGive={() => setBasis(one)}>
              {BASIS_WORDS[one]}
            </AnswerButton>
          ))}
        </fieldset>
        <div className="run-box-row">
          <button type="submit" className="run-button run-button-main">
            Save
          </button>
          <FieldSaved state={state} />
        </div>
      </form>
    </Dialog>
  );
}

/** Both, so that a slip of the unit is seen before it is saved. */
function bothUnits(valueKw: number): string {
  const [, btuPerH] = entryUnits('ratedInputKw');
  return `= ${formatNumber(valueKw, 1)} kW${btuPerH === undefined ? '' : ` = ${formatNumber(btuPerH.fromOwn(valueKw), 0)} ${btuPerH.symbol}`}`;
}
