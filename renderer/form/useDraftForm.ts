/**
 * The state of one form: what is typed (kept across a reload), what is wrong with it field by field, and the act of
 * sending it. The contract's own schema judges it before it leaves; nothing typed is lost when the core refuses.
 */
import { useCallback, useRef, useState } from 'react';
import {
  contract,
  type ErrorsOf,
  type InputOf,
  type OperationName,
  type OutputOf,
} from '../../electron/contract/index.ts';
import { useAct } from '../operations/useAct.ts';
import { type FieldErrors, FormReader } from './FormReader.ts';
import { dropDraft, keepDraft, readDraft } from './formDrafts.ts';
import { issueWords } from './issueWords.ts';

export type DraftForm<V extends object> = {
  readonly values: V;
  readonly set: (patch: Partial<V>) => void;
  readonly errors: FieldErrors;
  /** `restored`: typed before a reload; `record-changed`: and the record is not what it was then. */
  readonly draft: 'none' | 'restored' | 'record-changed';
  readonly discardDraft: () => void;
  readonly submit: () => Promise<void>;
  readonly isBusy: boolean;
  /** Counts refused tries, so that the form can lead the keyboard to the first wrong field. */
  readonly refusals: number;
};

export type DraftFormOf<V extends object, N extends OperationName> = DraftForm<V> & {
  /** What the core said, other than about single fields. */
  readonly error: ErrorsOf<N> | null;
  readonly sendAnyway: (change: (input: InputOf<N>) => InputOf<N>) => Promise<void>;
};

export function useDraftForm<V extends object, N extends OperationName>({
  draftKey,
  initial,
  operation,
  inputRoot = '',
  toInput,
  onDone,
}: {
  readonly draftKey: string;
  readonly initial: V;
  readonly operation: N;
  /** Where the fields lie in the input: `site` for `site.street`. */
  readonly inputRoot?: string;
  readonly toInput: (values: V, reader: FormReader) => InputOf<N>;
  readonly onDone: (value: OutputOf<N>, values: V) => void;
}): DraftFormOf<V, N> {
  const { act, isBusy, error, clearError } = useAct(operation);
  const [start] = useState(() => {
    const base = JSON.stringify(initial);
    const kept = readDraft(draftKey, initial);
    return { base, kept };
  });
  const [values, setValues] = useState<V>(start.kept?.values ?? initial);
  const [errors, setErrors] = useState<FieldErrors>({});
  const [refusals, setRefusals] = useState(0);
  const [draft, setDraft] = useState<DraftForm<V>['draft']>(
    start.kept === null ? 'none' : start.kept.base === start.base ? 'restored' : 'record-changed',
  );
  const latest = useRef(values);

  const set = useCallback(
    (patch: Partial<V>) => {
      latest.current = { ...latest.current, ...patch };
      setValues(latest.current);
      if (JSON.stringify(latest.current) === start.base) dropDraft(draftKey);
      else keepDraft(draftKey, { values: latest.current, base: start.base });
      setErrors((before) => withoutFields(before, Object.keys(patch)));
    },
    [draftKey, start.base],
  );

  const refuse = (found: FieldErrors) => {
    setErrors(found);
    setRefusals((count) => count + 1);
  };

  const send = async (change: (input: InputOf<N>) => InputOf<N>) => {
    const reader = new FormReader();
    const sent = latest.current;
    const input = change(toInput(sent, reader));
    const found = { ...checkAgainstContract(operation, input, inputRoot), ...reader.errors };
    if (Object.keys(found).length > 0) {
      clearError();
      refuse(found);
      return;
    }
    // What was wrong before is right now, whatever the core will say.
    setErrors({});
    const reply = await act(input);
    if (reply.ok) {
      dropDraft(draftKey);
      setDraft('none');
      onDone(reply.value, sent);
      return;
    }
    if (reply.error.code === 'bad-input') refuse(fieldsOf(reply.error.data, inputRoot));
  };

  return {
    values,
    set,
    errors,
    draft,
    discardDraft: () => {
      dropDraft(draftKey);
      latest.current = initial;
      setValues(initial);
      setErrors({});
      setDraft('none');
    },
    submit: () => send((input) => input),
    sendAnyway: send,
    isBusy,
    refusals,
    error: error?.code === 'bad-input' ? null : error,
  };
}

function checkAgainstContract(operation: OperationName, input: unknown, inputRoot: string): FieldErrors {
  const parsed = contract[operation].input.safeParse(input);
  if (parsed.success) return {};
  return Object.fromEntries(
    // The first complaint about a field is the one shown: later ones follow from it.
    parsed.error.issues
      .toReversed()
      .map((issue) => [fieldOf(issue.path.map(String).join('.'), inputRoot), issueWords(issue)]),
  );
}

function fieldsOf(
  { issues }: { readonly issues: readonly { readonly path: string; readonly message: string }[] },
  inputRoot: string,
): FieldErrors {
  return Object.fromEntries(issues.map(({ path, message }) => [fieldOf(path, inputRoot), message]));
}

function fieldOf(path: string, inputRoot: string): string {
  return inputRoot !== '' && path.startsWith(`${inputRoot}.`) ? path.slice(inputRoot.length + 1) : path;
}

/** Typing in a field, or in a row of a list, takes away what was said about it. */
function withoutFields(errors: FieldErrors, fields: readonly string[]): FieldErrors {
  return Object.fromEntries(
    Object.entries(errors).filter(([path]) => !fields.some((field) => path === field || path.startsWith(`${field}.`))),
  );
}
