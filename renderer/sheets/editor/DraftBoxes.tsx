/** The boxes of a draft: words, numbers, ticks and choices. Each shows what is typed at once and is kept when it is left. */
import { Checkbox, NativeSelect, Textarea, TextInput } from '@mantine/core';
import { useState } from 'react';
import type { Json, SheetPath } from '../../../domain/procedure/sheetEdit.ts';
import { readNumberText } from '../../../domain/quantity/readNumberText.ts';
import { CheckGroup } from '../../form/CheckGroup.tsx';
import { useAtPath } from './DraftContext.ts';
import { parentOf } from './fieldPlace.ts';
import { fieldWords, optionWords } from './fieldWords.ts';
import type { FormField } from './formNode.ts';
import { optionsAt } from './optionsAt.ts';

export type FieldProps = { readonly path: SheetPath; readonly field: FormField };

export function useField({ path, field }: FieldProps, isWhole = false) {
  const { draft, key, value, problem } = useAtPath(path, isWhole);
  const { label, hint } = fieldWords(field.name, parentOf(path));
  const shared = {
    label,
    description: hint,
    error: problem,
    'data-path': key,
    required: !field.isOptional && !field.isNullable,
    onBlur: draft.leave,
  };
  /** What it holds when nothing is chosen or typed. */
  const nothing: Json | undefined = field.isNullable ? null : undefined;
  const put = (next: Json | undefined) => {
    draft.type(path, next);
    draft.leave();
  };
  return { draft, value: value === undefined ? field.fallback : value, shared, nothing, put, label, problem };
}

export function TextBox(props: FieldProps) {
  const { draft, value, shared, nothing } = useField(props);
  const { node, isOptional, isNullable } = props.field;
  const text = typeof value === 'string' ? value : value === null || value === undefined ? '' : JSON.stringify(value);
  const isLong = node.kind === 'text' && (node.maxLength ?? 0) >= 300 && !SHORT.has(props.field.name);
  const onText = (next: string) => draft.type(props.path, next === '' && (isOptional || isNullable) ? nothing : next);
  return isLong ? (
    <Textarea {...shared} autosize minRows={1} value={text} onChange={(event) => onText(event.currentTarget.value)} />
  ) : (
    <TextInput {...shared} autoComplete="off" value={text} onChange={(event) => onText(event.currentTarget.value)} />
  );
}

/** Long by the schema, short by habit. */
const SHORT = new Set(['maker', 'title', 'label', 'conversion']);

/** Keeps the text as typed while it is no number: the sheet's check says so, nothing is lost. */
export function NumberBox(props: FieldProps) {
  const { draft, value, shared, nothing } = useField(props);
  const [typed, setTyped] = useState<string | null>(null);
  const stored = value === null || value === undefined ? '' : String(value);
  return (
    <TextInput
      {...shared}
      autoComplete="off"
      inputMode="decimal"
      value={typed ?? stored}
      onChange={(event) => {
        const text = event.currentTarget.value;
        setTyped(text);
        draft.type(props.path, text.trim() === '' ? nothing : (numberIn(text) ?? text));
      }}
      onBlur={() => {
        setTyped(null);
        draft.leave();
      }}
    />
  );
}

function numberIn(text: string): number | null {
  const read = readNumberText(text);
  return read !== null && read.comparator === '=' && read.rest === '' && read.candidates.length === 1
    ? read.candidates[0]
    : null;
}

export function Flag(props: FieldProps) {
  const { value, shared, put } = useField(props);
  const { required: _required, ...plain } = shared;
  return (
    <Checkbox
      {...plain}
      checked={value === true}
      size="md"
      styles={{ body: { minHeight: '2.75rem', alignItems: 'center' } }}
      onChange={(event) => put(event.currentTarget.checked)}
    />
  );
}

export function Choice(props: FieldProps & { readonly options: readonly string[] }) {
  return <Select {...props} options={props.options.map((value) => ({ value, label: optionWords(value) }))} />;
}

/** The name of something elsewhere in the sheet; one that is gone is shown, so that it can be put right. */
export function Pointer(props: FieldProps) {
  const { draft, value } = useField(props);
  const known = optionsAt(props.path, draft.body) ?? [];
  const isGone = typeof value === 'string' && value !== '' && !known.some((one) => one.value === value);
  return <Select {...props} options={isGone ? [...known, { value, label: `${value} (not there)` }] : known} />;
}

function Select(
  props: FieldProps & { readonly options: readonly { readonly value: string; readonly label: string }[] },
) {
  const { value, shared, nothing, put } = useField(props);
  const current = typeof value === 'string' ? value : '';
  const mayBeNothing = props.field.isNullable || props.field.isOptional || current === '';
  return (
    <NativeSelect
      {...shared}
      value={current}
      data={[...(mayBeNothing ? [{ value: '', label: shared.required ? 'choose …' : 'none' }] : []), ...props.options]}
      onChange={(event) => put(event.currentTarget.value === '' ? nothing : event.currentTarget.value)}
    />
  );
}

export function Choices(props: FieldProps & { readonly options: readonly string[] }) {
  return <Ticks {...props} options={props.options.map((value) => ({ value, label: optionWords(value) }))} />;
}

export function Pointers(props: FieldProps) {
  const { draft, value } = useField(props);
  const known = optionsAt(props.path, draft.body) ?? [];
  const gone = textsIn(value).filter((one) => !known.some((option) => option.value === one));
  return <Ticks {...props} options={[...known, ...gone.map((one) => ({ value: one, label: `${one} (not there)` }))]} />;
}

function Ticks(
  props: FieldProps & { readonly options: readonly { readonly value: string; readonly label: string }[] },
) {
  const { value, shared, put } = useField(props, true);
  const chosen = textsIn(value);
  return (
    <div className="lo-wide" data-path={shared['data-path']}>
      <CheckGroup
        label={shared.label}
        options={props.options}
        values={chosen}
        error={shared.error}
        onValues={(next) => {
          // In the order they are offered, however they were ticked.
          const ordered = props.options.map((one) => one.value).filter((one) => next.includes(one));
          put(
            ordered.length === 0 && props.field.isOptional && props.field.fallback === undefined ? undefined : ordered,
          );
        }}
      />
    </div>
  );
}

export function Lines(props: FieldProps) {
  const { draft, value, shared } = useField(props, true);
  const [typed, setTyped] = useState<string | null>(null);
  return (
    <Textarea
      {...shared}
      autosize
      minRows={2}
      value={typed ?? textsIn(value).join('\n')}
      onChange={(event) => {
        const text = event.currentTarget.value;
        setTyped(text);
        draft.type(
          props.path,
          text
            .split('\n')
            .map((line) => line.trim())
            .filter((line) => line !== ''),
        );
      }}
      onBlur={() => {
        setTyped(null);
        draft.leave();
      }}
    />
  );
}

function textsIn(value: Json | undefined): readonly string[] {
  return Array.isArray(value) ? value.filter((one) => typeof one === 'string') : [];
}
