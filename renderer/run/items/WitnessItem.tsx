/** A proof that somebody else gives: their name, typed or one of the crew's by a key. */
import { useId } from 'react';
import type { ItemOf } from '../../../domain/procedure/modelSheet.ts';
import type { ItemAddress } from '../../../domain/procedure/progressTypes.ts';
import { FieldSaved } from '../../kit/FieldSaved.tsx';
import { KeyHint } from '../../kit/KeyHint.tsx';
import { useField } from '../field/useField.ts';
import { isAltKey } from '../focus/isAltKey.ts';
import { newestAnswer } from '../stage/answerText.ts';
import { useRun } from '../state/RunContext.ts';
import { useAnswerSave } from '../state/useItemWrites.ts';

const MOST_NAMES = 4;

export function WitnessItem({ item, address }: { readonly item: ItemOf<'witness'>; readonly address: ItemAddress }) {
  const { view, saveAndGoOn, signedIn } = useRun();
  const here = { stepKey: address.stepKey, itemKey: item.key };
  const saveAnswer = useAnswerSave(here);
  const id = useId();
  const field = useField({
    address: here,
    box: 'name',
    label: item.label,
    stored: newestAnswer(view.record, item.key)?.value ?? '',
    save: (text) => saveAnswer(text.trim(), null),
  });
  const names =
    item.by === 'occupant'
      ? []
      : view.people
          .filter((person) => person.staffId !== signedIn.staffId && (item.by === 'anyone' || person.isLicensed))
          .map((person) => person.name)
          .slice(0, MOST_NAMES);
  const take = (name: string) => {
    field.type(name);
    void saveAndGoOn(here, field.commit);
  };
  return (
    <div className="run-note">
      <label htmlFor={id}>{LABELS[item.by]}</label>
      <div className="run-box-row">
        <input
          id={id}
          className="run-text"
          data-wide
          data-main
          type="text"
          autoComplete="off"
          maxLength={300}
          value={field.text}
          onChange={(event) => field.type(event.currentTarget.value)}
          onBlur={() => void field.commit()}
          onKeyDown={(event) => {
            const name = names[names.findIndex((_, index) => isAltKey(event, String(index + 1)))];
            if (name !== undefined) take(name);
            else if (event.key === 'Enter') void saveAndGoOn(here, field.commit);
            else return;
            event.preventDefault();
          }}
        />
        <FieldSaved state={field.state} />
      </div>
      <div className="run-ready-words">
        {names.map((name, index) => (
          <button key={name} type="button" className="run-button" onClick={() => take(name)}>
            <KeyHint keys={`Alt+${index + 1}`} /> {name}
          </button>
        ))}
      </div>
    </div>
  );
}

const LABELS: Record<ItemOf<'witness'>['by'], string> = {
  licensed: 'Name of the other licensed person who confirms it',
  occupant: 'Name of the occupant',
  anyone: 'Name of the person who confirms it',
};
