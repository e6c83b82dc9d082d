/** One of a few answers by its number. One that needs a cause asks for it; one that means stop takes over the screen. */
import { useState } from 'react';
import { failedTest, mayNameInstrument, saysStop } from '../../../domain/procedure/failedTest.ts';
import type { ItemOf } from '../../../domain/procedure/modelSheet.ts';
import type { ItemAddress } from '../../../domain/procedure/progressTypes.ts';
import { FieldSaved } from '../../kit/FieldSaved.tsx';
import { InstrumentPick } from '../field/InstrumentPick.tsx';
import { plainKey } from '../focus/isAltKey.ts';
import { useKeys } from '../focus/useKeys.ts';
import { givenAnswerText, newestAnswer } from '../stage/answerText.ts';
import { useRun } from '../state/RunContext.ts';
import { useAnswerSave, useItemWrites } from '../state/useItemWrites.ts';
import { AnswerButton } from './AnswerButton.tsx';
import { ReasonBox } from './ReasonBox.tsx';

type Option = ItemOf<'choose'>['options'][number];

export function ChooseItem({ item, address }: { readonly item: ItemOf<'choose'>; readonly address: ItemAddress }) {
  const { view, analysis, saveAndGoOn } = useRun();
  const { state, answer } = useItemWrites({ stepKey: address.stepKey, itemKey: item.key });
  const saveAnswer = useAnswerSave({ stepKey: address.stepKey, itemKey: item.key });
  const given = newestAnswer(view.record, item.key);
  const givenOption = item.options.find((option) => option.value === given?.value);
  const [isExplaining, setExplaining] = useState(false);
  const nameOf = (staffId: string) => view.people.find((one) => one.staffId === staffId)?.name ?? '';

  const answers = view.record.answers.filter((one) => one.itemKey === item.key);
  const step = analysis.steps.find(({ key }) => key === address.stepKey);
  const isTest = (step !== undefined && mayNameInstrument(item, step)) || given?.instrumentId != null;
  const hasFailed = answers.some((one) => saysStop(item, one));
  const test = failedTest(item, answers);
  const [pickedId, setInstrumentId] = useState<string | null>();
  // What is shown is what an answer is kept with.
  const instrumentId = pickedId === undefined ? (given?.instrumentId ?? null) : pickedId;

  const give = (option: Option) => {
    const reason = given?.value === option.value ? given.reason : null;
    // A test that failed before is not put right by one key: why it holds now is asked for.
    if (option.outcome === 'fine' && !(hasFailed && given?.value !== option.value)) {
      void saveAndGoOn(address, () => answer(option.value, reason, instrumentId), 'answered');
      return;
    }
    void answer(option.value, reason, instrumentId).then((isSaved) => {
      if (isSaved && option.outcome !== 'stop') setExplaining(true);
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
      {isTest ? (
        <div className="run-who-and-with">
          <InstrumentPick
            label="tested with"
            choices={view.record.instruments}
            chosenId={instrumentId}
            onChoose={setInstrumentId}
          />
        </div>
      ) : null}
      {test !== null && given?.value != null && givenOption?.outcome === 'fine' ? (
        <>
          {test.isClosed ? null : (
            <p className="run-card-why" role="status">
              The results disagree, and both stay on file: {nameOf(test.failed.byId)} answered “
              {givenAnswerText(item, test.failed)}”, {nameOf(test.last.byId)} “{givenAnswerText(item, test.last)}”. It
              stays open until a licensed person says which holds, and why.
            </p>
          )}
          <ReasonBox
            address={{ stepKey: address.stepKey, itemKey: item.key }}
            box="holds"
            label="Which result holds, and why (licensed person)"
            stored={given.reason ?? ''}
            save={(text) => saveAnswer(given.value, text, given.instrumentId ?? null)}
            isFocused={isExplaining}
          />
        </>
      ) : null}
      {givenOption?.outcome === 'finding' ? (
        <ReasonBox
          address={{ stepKey: address.stepKey, itemKey: item.key }}
          box="reason"
          label="Cause, and what was done"
          stored={given?.reason ?? ''}
          save={(text) => saveAnswer(givenOption.value, text, given?.instrumentId ?? null)}
          isFocused={isExplaining}
        />
      ) : null}
    </>
  );
}
