/** One field of a draft, whatever its shape: the schema says what it takes, the words what it is called. */
import { Checkbox, NativeSelect } from '@mantine/core';
import type { ReactNode } from 'react';
import type { Json, SheetPath } from '../../../domain/procedure/sheetEdit.ts';
import { assertNever } from '../../../domain/result.ts';
import { asVariant, blankValue } from './blankValue.ts';
import {
  Choice,
  Choices,
  type FieldProps,
  Flag,
  Lines,
  NumberBox,
  Pointer,
  Pointers,
  TextBox,
  useField,
} from './DraftBoxes.tsx';
import { useAtPath, useDraft } from './DraftContext.ts';
import { DraftList } from './DraftList.tsx';
import { parentOf } from './fieldPlace.ts';
import { fieldWords, optionWords } from './fieldWords.ts';
import type { FormField, FormNode } from './formNode.ts';
import { optionsAt } from './optionsAt.ts';

export function DraftFields({ path, fields }: { readonly path: SheetPath; readonly fields: readonly FormField[] }) {
  return (
    <div className="lo-fields">
      {fields.map((field) => (
        <DraftField key={field.name} path={[...path, field.name]} field={field} />
      ))}
    </div>
  );
}

function DraftField({ path, field }: FieldProps) {
  const { node } = field;
  switch (node.kind) {
    case 'text':
      return optionsAtPlace(path) ? <Pointer path={path} field={field} /> : <TextBox path={path} field={field} />;
    case 'number':
      return <NumberBox path={path} field={field} />;
    case 'flag':
      return <Flag path={path} field={field} />;
    case 'choice':
      return <Choice path={path} field={field} options={node.options} />;
    case 'choices':
      return <Choices path={path} field={field} options={node.options} />;
    case 'lines':
      return optionsAtPlace(path) ? <Pointers path={path} field={field} /> : <Lines path={path} field={field} />;
    case 'group':
      return (
        <Part path={path} field={field}>
          <DraftFields path={path} fields={node.fields} />
        </Part>
      );
    case 'list':
      return (
        <Part path={path} field={field}>
          <DraftList
            path={path}
            of={node.of}
            name={fieldWords(field.name, parentOf(path)).label}
            renderEntry={(entryPath, entry) => <EntryFields path={entryPath} of={node.of} entry={entry} />}
          />
        </Part>
      );
    case 'variants':
      return (
        <Part path={path} field={field}>
          <Variants path={path} field={field} />
        </Part>
      );
    case 'either':
      return (
        <Part path={path} field={field}>
          <Either path={path} cases={node.cases} />
        </Part>
      );
    default:
      return assertNever(node);
  }
}

/** A part with fields of its own; one that may be missing is put in or taken out as a whole. */
function Part({ path, field, children }: FieldProps & { readonly children: ReactNode }) {
  const { value, label, shared, nothing, put, problem } = useField({ path, field });
  const isThere = value !== undefined && value !== null;
  const mayMiss = field.isNullable || (field.isOptional && field.fallback === undefined);
  return (
    <fieldset className="lo-wide sheet-part" data-path={shared['data-path']} tabIndex={-1}>
      <legend>{label}</legend>
      {shared.description === undefined ? null : <p className="lo-faint">{shared.description}</p>}
      {problem === undefined ? null : (
        <p className="sheet-problem" role="alert">
          {problem}
        </p>
      )}
      {mayMiss ? (
        <Checkbox
          label={`${label}: stated on this sheet`}
          checked={isThere}
          size="md"
          styles={{ body: { minHeight: '2.75rem', alignItems: 'center' } }}
          onChange={(event) => put(event.currentTarget.checked ? (blankValue(field.node) ?? {}) : nothing)}
        />
      ) : null}
      {isThere ? children : null}
    </fieldset>
  );
}

function Variants({ path, field }: FieldProps) {
  const { draft, value } = useField({ path, field });
  if (field.node.kind !== 'variants') return null;
  return (
    <VariantFields
      path={path}
      node={field.node}
      value={value ?? {}}
      onValue={(next) => {
        draft.type(path, next);
        draft.leave();
      }}
    />
  );
}

/** The telling field first; choosing another keeps what both shapes have. */
function VariantFields({
  path,
  node,
  value,
  onValue,
}: {
  readonly path: SheetPath;
  readonly node: Extract<FormField['node'], { kind: 'variants' }>;
  readonly value: Json;
  readonly onValue: (next: Json) => void;
}) {
  const { value: tagValue, problem } = useAtPath([...path, node.tag], true);
  const current = node.cases.find((one) => one.value === tagValue);
  return (
    <>
      <div className="lo-fields">
        <NativeSelect
          label={fieldWords(node.tag, parentOf([...path, node.tag])).label}
          error={problem}
          data-path={[...path, node.tag].join('.')}
          value={current?.value ?? ''}
          data={[
            ...(current === undefined ? [{ value: '', label: 'choose …' }] : []),
            ...node.cases.map((one) => ({ value: one.value, label: optionWords(one.value) })),
          ]}
          onChange={(event) => {
            const next = node.cases.find((one) => one.value === event.currentTarget.value);
            if (next !== undefined) onValue(asVariant(value, node.tag, next));
          }}
        />
      </div>
      {current === undefined ? null : <DraftFields path={path} fields={current.fields} />}
    </>
  );
}

function Either({ path, cases }: { readonly path: SheetPath; readonly cases: readonly FormField[] }) {
  const { draft, value } = useAtPath(path, false);
  const current =
    cases.find(({ name }) => typeof value === 'object' && value !== null && Object.hasOwn(value, name)) ?? cases[0];
  if (current === undefined) return null;
  return (
    <div className="lo-fields">
      <NativeSelect
        label="In"
        value={current.name}
        data={cases.map(({ name }) => ({ value: name, label: fieldWords(name, '').label.toLowerCase() }))}
        onChange={(event) => {
          const next = event.currentTarget.value;
          const number =
            typeof value === 'object' && value !== null && !Array.isArray(value) ? value[current.name] : undefined;
          draft.type(path, number === undefined ? {} : { [next]: number });
          draft.leave();
        }}
      />
      <DraftField path={[...path, current.name]} field={current} />
    </div>
  );
}

function EntryFields({ path, of, entry }: { readonly path: SheetPath; readonly of: FormNode; readonly entry: Json }) {
  const draft = useDraft();
  if (of.kind === 'group') return <DraftFields path={path} fields={of.fields} />;
  if (of.kind !== 'variants') return null;
  return (
    <VariantFields
      path={path}
      node={of}
      value={entry}
      onValue={(next) => {
        draft.leave();
        draft.edit({ kind: 'set', path, value: next });
      }}
    />
  );
}

function optionsAtPlace(path: SheetPath): boolean {
  return optionsAt(path, {}) !== null;
}
