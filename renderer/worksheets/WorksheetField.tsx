/** One input: a box with its unit, or a choice; under it what to watch, or what is wrong with what was typed. */
import { Button, Input, NativeSelect } from '@mantine/core';
import { type KeyboardEvent, useId } from 'react';
import { useUnitSystem } from '../operations/AppStatus.tsx';
import { meaningsOf } from '../run/field/meaningsOf.ts';
import { meaningText, type PickedMeaning } from '../run/field/meaningText.ts';
import { problemWords } from '../run/words/problemWords.ts';
import { chosen, type FieldProblem, type TypedInput, typedNumber } from './core/evaluate.ts';
import type { ChoiceField, Field, NumberField } from './core/fields.ts';

type Props<F extends Field> = {
  readonly field: F;
  readonly typed: TypedInput | undefined;
  readonly problem: FieldProblem | null;
  readonly onType: (input: TypedInput) => void;
};

export function WorksheetField({ field, ...rest }: Props<Field>) {
  return field.kind === 'choice' ? <Choice field={field} {...rest} /> : <NumberBox field={field} {...rest} />;
}

function Choice({ field, typed, onType }: Props<ChoiceField>) {
  const unitSystem = useUnitSystem();
  const inputId = useId();
  const helpId = useId();
  return (
    <div
      className="ws-field"
      data-wide={Object.values(field.options).some(({ length }) => length > MOST_LETTERS_BESIDE)}
    >
      <label htmlFor={inputId}>{field.label}</label>
      <NativeSelect
        id={inputId}
        className="ws-choice"
        aria-describedby={field.help === undefined ? undefined : helpId}
        value={chosen(field, typed, unitSystem)}
        data={Object.entries(field.options).map(([value, label]) => ({ value, label }))}
        onChange={(event) => onType({ text: event.currentTarget.value })}
        onKeyDown={goOnEnter}
      />
      {field.help === undefined ? null : (
        <p id={helpId} className="ws-help">
          {field.help}
        </p>
      )}
    </div>
  );
}

/** What a choice beside its label has room for. */
const MOST_LETTERS_BESIDE = 25;

function NumberBox({ field, typed, problem, onType }: Props<NumberField>) {
  const unitSystem = useUnitSystem();
  const inputId = useId();
  const helpId = useId();
  const { text, unit } = typedNumber(field, typed, unitSystem);
  const units = field.measure.units.map(({ symbol }) => symbol);
  const isUsual = typed === undefined && text !== '';
  return (
    <div className="ws-field">
      <label htmlFor={inputId}>
        {field.label}
        {isUsual ? <span className="lo-faint"> (usual)</span> : null}
      </label>
      <Input
        id={inputId}
        className="ws-box"
        inputMode="text"
        autoComplete="off"
        spellCheck={false}
        maxLength={60}
        value={text}
        error={problem !== null}
        aria-invalid={problem !== null}
        aria-describedby={helpId}
        onChange={(event) => onType({ text: event.currentTarget.value, unit })}
        onFocus={(event) => event.currentTarget.select()}
        onKeyDown={goOnEnter}
      />
      {units.length > 1 ? (
        <NativeSelect
          className="ws-unit"
          aria-label={`${field.label}: unit`}
          value={unit}
          data={units}
          onChange={(event) => onType({ text, unit: event.currentTarget.value })}
        />
      ) : (
        <span className="ws-unit lo-faint">{unit}</span>
      )}
      <div id={helpId} className="ws-help" data-problem={problem !== null}>
        {problem === null ? (
          field.help
        ) : (
          <ProblemText problem={problem} onMeaning={(meaning) => onType(typedAs(meaning))} />
        )}
      </div>
    </div>
  );
}

function ProblemText({
  problem,
  onMeaning,
}: {
  readonly problem: FieldProblem;
  readonly onMeaning: (meaning: PickedMeaning) => void;
}) {
  if (problem.kind === 'words') return problem.words;
  const meanings = meaningsOf(problem.problem);
  return (
    <>
      {problemWords(problem.problem)}
      {meanings.map((meaning) => (
        <Button
          key={meaningText(meaning)}
          size="compact-sm"
          variant="default"
          ml="xs"
          onClick={() => onMeaning(meaning)}
        >
          {meaningText(meaning)}
        </Button>
      ))}
    </>
  );
}

function typedAs(meaning: PickedMeaning): TypedInput {
  return { text: meaningText(meaning), unit: meaning.unit };
}

/** Enter goes to the next box, as in the run: the other hand holds the instrument. */
function goOnEnter(event: KeyboardEvent<HTMLElement>): void {
  if (event.key !== 'Enter') return;
  event.preventDefault();
  const boxes = [
    ...(event.currentTarget.closest('.ws-fields')?.querySelectorAll<HTMLElement>('.ws-box input, .ws-choice select') ??
      []),
  ];
  boxes[boxes.indexOf(event.currentTarget) + 1]?.focus();
}
