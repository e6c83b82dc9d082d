/** What was answered here before, and by whom: nothing said is lost, and the newest counts. */
import type { StepItem } from '../../../domain/procedure/modelSheet.ts';
import type { RecordedAnswer } from '../../../domain/procedure/runRecord.ts';
import { toldAnswers } from '../../../domain/procedure/toldAnswers.ts';
import { instantWords } from '../../kit/dayWords.ts';
import { givenAnswerText } from '../stage/answerText.ts';
import { useRun } from '../state/RunContext.ts';

export function AnswerHistory({ item }: { readonly item: StepItem }) {
  const { view } = useRun();
  const { record } = view;
  const answers = toldAnswers(record.answers.filter((one) => one.itemKey === item.key));
  if (answers.length < 2) return null;
  const nameOf = (staffId: string) => view.people.find((one) => one.staffId === staffId)?.name ?? '';
  const withWhat = ({ instrumentId }: RecordedAnswer) => {
    const instrument = record.instruments.find((one) => one.instrumentId === instrumentId);
    return instrument === undefined ? '' : `, with ${instrument.label}`;
  };
  return (
    <section className="run-history" aria-label="Answers so far">
      <ol>
        {answers.map((answer, index) => (
          <li
            key={`${answer.at} ${answer.value}`}
            className="run-history-row"
            data-counts={index === answers.length - 1}
          >
            <b>{givenAnswerText(item, answer)}</b>
            <span className="run-history-who lo-faint">
              {nameOf(answer.byId)}, {instantWords(answer.at, record.site.timeZone)}
              {withWhat(answer)}
              {index === answers.length - 1 ? ' · counts' : ''}
            </span>
          </li>
        ))}
      </ol>
    </section>
  );
}
