/** One of a few answers by its number. One that needs a cause asks for it; one that means stop takes over the screen. */
import { useState } from 'react';
import type { ItemOf } from '../../../domain/procedure/modelSheet.ts';
import type { ItemAddress } from '../../../domain/procedure/progressTypes.ts';
import { FieldSaved } from '../../kit/FieldSaved.tsx';
import { plainKey } from '../focus/isAltKey.ts';
import { useKeys } from '../focus/useKeys.ts';
import { newestAnswer } from '../stage/answerText.ts';
import { useRun } from '../state/RunContext.ts';
import { useAnswerSave, useItemWrites } from '../state/useItemWrites.ts';
import { AnswerButton } from './AnswerButton.tsx';
import { ReasonBox } from './ReasonBox.tsx';

type Option = ItemOf<'choose'>['options'][number];

export function ChooseItem({ item, address }: { readonly item: ItemOf<'choose'>; readonly address: ItemAddress }) {
  const { view, saveAndGoOn } = useRun();
  const { state, answer } = useItemWrites({ stepKey: address.stepKey, itemKey: item.key });
  const saveAnswer = useAnswerSave({ stepKey: address.stepKey, itemKey: item.key });
  const given = newestAnswer(view.record, item.key);
  const givenOption = item.options.find((option) => option.value === given?.value);
  const [isExplaining, setExplaining] = useState(false);

  const give = (option: Option) => {
    const reason = given?.value === option.value ? given.reason : null;
    if (option.outcome === 'fine') {
      void saveAndGoOn(address, () => answer(option.value, reason), 'answered');
      return;
    }
    void answer(option.value, reason).then((isSaved) => {
      if (isSaved && option.outcome === 'finding') setExplaining(true);
    });
  };
  const keys = useKeys<HTMLFieldSetElement>((event) => {
    const key = plainKey(event);
    const option = key !== null && /^[1-9]$/.test(key) ? item.options[Number(key) - 1] : undefined;
    if (option !== undefined) give(option);
    else if (event.key === 'Enter' && event.target === event.currentTarget && given?.value != null)
      void saveAndGoOn(address, async () => true);
    else return;
    event.preventDefault();
  });
  return (
    <>
      <fieldset
        ref={keys}
        className="run-answers"
        data-many={item.options.length > 3}
        aria-labelledby={`label-${item.key}`}
        tabIndex={-1}
        data-main
      >
        {item.options.map((option, index) => (
          <AnswerButton
            key={option.value}
            answerKey={String(index + 1)}
            tone={option.outcome === 'stop' ? 'ember' : 'plain'}
            isGiven={given?.value === option.value}
            onGive={() => give(option)}
          >
            {option.label}
            {option.outcome === 'stop' ? <span className="run-answer-stops">stop</span> : null}
          </AnswerButton>
        ))}
        <FieldSaved state={state} />
      </fieldset>
      {givenOption?.outcome === 'finding' ? (
        <ReasonBox
          address={{ stepKey: address.stepKey, itemKey: item.key }}
          box="reason"
          label="Cause, and what was done"
          stored={given?.reason ?? ''}
          save={(text) => saveAnswer(givenOption.value, text)}
          isFocused={isExplaining}
        />
      ) : null}
    </>
  );
}
