/** Yes, no or not applicable by one key. "No" is saved at once; what is wrong can be added. */
import { useState } from 'react';
import type { ItemOf } from '../../../domain/procedure/modelSheet.ts';
import type { ItemAddress } from '../../../domain/procedure/progressTypes.ts';
import { SecondCopyWords } from '../../backups/SecondCopyWords.tsx';
import { FieldSaved } from '../../kit/FieldSaved.tsx';
import { plainKey } from '../focus/isAltKey.ts';
import { useKeys } from '../focus/useKeys.ts';
import { newestAnswer } from '../stage/answerText.ts';
import { useRun } from '../state/RunContext.ts';
import { useAnswerSave, useItemWrites } from '../state/useItemWrites.ts';
import { AnswerButton } from './AnswerButton.tsx';
import { ReasonBox } from './ReasonBox.tsx';

/** The demand of practice that a second copy is stored or queued before leaving. */
const SECOND_COPY = '3/before-leaving/11';

export function ConfirmItem({ item, address }: { readonly item: ItemOf<'confirm'>; readonly address: ItemAddress }) {
  const { view, saveAndGoOn } = useRun();
  const { state, answer } = useItemWrites({ stepKey: address.stepKey, itemKey: item.key });
  const saveAnswer = useAnswerSave({ stepKey: address.stepKey, itemKey: item.key });
  const given = newestAnswer(view.record, item.key);
  const [isExplaining, setExplaining] = useState(false);

  const give = (value: 'yes' | 'no' | 'not-applicable') => {
    if (value !== 'no') {
      void saveAndGoOn(address, () => answer(value, null), 'answered');
      return;
    }
    void answer('no', given?.value === 'no' ? given.reason : null).then((isSaved) => {
      if (isSaved) setExplaining(true);
    });
  };
  const keys = useKeys<HTMLFieldSetElement>((event) => {
    const key = plainKey(event);
    if (key === 'y') give('yes');
    else if (key === 'n') give('no');
    else if (key === 'a' && item.notApplicable) give('not-applicable');
    else if (event.key === 'Enter' && event.target === event.currentTarget && given?.value != null)
      void saveAndGoOn(address, async () => true);
    else return;
    event.preventDefault();
  });
  return (
    <>
      <fieldset ref={keys} className="run-answers" aria-labelledby={`label-${item.key}`} tabIndex={-1} data-main>
        <AnswerButton answerKey="Y" tone="good" isGiven={given?.value === 'yes'} onGive={() => give('yes')}>
          Yes
        </AnswerButton>
        <AnswerButton answerKey="N" tone="ember" isGiven={given?.value === 'no'} onGive={() => give('no')}>
          No
        </AnswerButton>
        {item.notApplicable ? (
          <AnswerButton answerKey="A" isGiven={given?.value === 'not-applicable'} onGive={() => give('not-applicable')}>
            Not applicable
          </AnswerButton>
        ) : null}
        <FieldSaved state={state} />
      </fieldset>
      {item.meets.includes(SECOND_COPY) ? <SecondCopyWords /> : null}
      {isExplaining || given?.value === 'no' ? (
        <ReasonBox
          address={{ stepKey: address.stepKey, itemKey: item.key }}
          box="reason"
          label="What is wrong (Enter goes on)"
          stored={given?.reason ?? ''}
          save={(text) => saveAnswer('no', text)}
          mayStayEmpty
          isFocused={isExplaining}
        />
      ) : null}
    </>
  );
}
