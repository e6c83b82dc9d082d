/** What is asked about a date that does not fit the others: day and month the wrong way round, another year, another date. */
import { Button, Group } from '@mantine/core';
import type { DateKindsProblem } from '../../domain/judgement/mistakes/dateKindsConfused.ts';
import type { DateQuestion } from '../../domain/judgement/mistakes/dateQuestions.ts';
import type { CoverDate } from '../../domain/procedure/modelSheet.ts';
import { COVER_DATE_WORDS } from '../kit/coverDates.ts';
import { dayWords } from '../kit/dayWords.ts';
import { Note } from '../kit/Note.tsx';

export function DateQuestionNote({
  question,
  kind,
  onTake,
}: {
  readonly question: DateQuestion;
  /** The date that is being typed: only this one can be changed here. */
  readonly kind: CoverDate;
  readonly onTake: (on: string) => void;
}) {
  const meant = 'meant' in question ? question.meant : [];
  return (
    <Note tone="caution" isSpoken>
      {questionWords(question)}
      {meant.length === 0 ? null : (
        <Group gap="sm" mt="xs">
          {meant.map((one) =>
            one.kind === kind ? (
              <Button key={one.on} variant="default" onClick={() => onTake(one.on)}>
                {dayWords(one.on)} was meant
              </Button>
            ) : (
              <span key={`${one.kind} ${one.on}`}>
                Or “{dateWords(one.kind)}” was {dayWords(one.on)}?
              </span>
            ),
          )}
        </Group>
      )}
    </Note>
  );
}

/** Which of the dates on file is which, or is missing: asked where they stand, each a press away from being set. */
export function KindsQuestionNote({
  question,
  onSet,
}: {
  readonly question: DateKindsProblem;
  /** null: only said, to somebody who may not change it. */
  readonly onSet: ((kind: CoverDate) => void) | null;
}) {
  return (
    <Note tone="caution">
      {questionWords(question)}
      {onSet === null ? null : (
        <Group gap="sm" mt="xs">
          {question.kinds.map((kind) => (
            <Button key={kind} variant="default" onClick={() => onSet(kind)}>
              Set “{dateWords(kind)}”
            </Button>
          ))}
        </Group>
      )}
    </Note>
  );
}

function questionWords(question: DateQuestion): string {
  if ('kinds' in question) {
    switch (question.why) {
      case 'rule-date-missing':
        return `The maker counts the registration from “${question.kinds.map(dateWords).join('”, “')}”, and that date is not known. ${lastDaysWords(question)}`;
      case 'started-before-installed':
        return 'Started up before it was installed? One of the two may be the other.';
      case 'lived-in-before-installed':
        return 'Lived in before the boiler of a new house was in? One of the two may be the other.';
    }
  }
  const { code, earlier, later, isImpossible } = question;
  if (!isImpossible) return 'More than a year between making and starting. Is the year right?';
  const pair =
    later === 'today'
      ? `“${dateWords(earlier)}” is still to come.`
      : `“${dateWords(earlier)}” is later than “${dateWords(later)}”.`;
  const guess = {
    'day-month-swapped': ' Day and month exchanged?',
    'wrong-year': ' Another year?',
    'date-kinds-confused': '',
  }[code];
  return `${pair}${guess}`;
}

function lastDaysWords({ lastDays }: DateKindsProblem): string {
  const each = lastDays.map(({ kind, dueOn }) => `${dayWords(dueOn)} by “${dateWords(kind)}”`);
  return each.length === 0 ? '' : `Until then the last day is not sure: it would be ${each.join(', ')}.`;
}

function dateWords(kind: CoverDate | 'registered'): string {
  return kind === 'registered' ? 'handed in' : COVER_DATE_WORDS[kind];
}
