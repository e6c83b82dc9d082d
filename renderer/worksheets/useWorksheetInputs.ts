/** The inputs of one worksheet as typed, kept in this tab. */
import { useCallback, useState } from 'react';
import type { TypedInput, TypedInputs } from './core/evaluate.ts';
import { keep, readKept } from './core/keptInputs.ts';

export type WorksheetInputs = {
  readonly typed: TypedInputs;
  readonly type: (field: string, input: TypedInput) => void;
  /** Several at once, over what stands there. */
  readonly fill: (inputs: TypedInputs) => void;
  readonly clear: () => void;
};

export function useWorksheetInputs(worksheetKey: string): WorksheetInputs {
  const [typed, setTyped] = useState<TypedInputs>(() => readKept(sessionStorage, worksheetKey) ?? {});
  const change = useCallback(
    (how: (before: TypedInputs) => TypedInputs) => {
      setTyped((before) => {
        const after = how(before);
        keep(sessionStorage, worksheetKey, after);
        return after;
      });
    },
    [worksheetKey],
  );
  return {
    typed,
    type: (field, input) => change((before) => ({ ...before, [field]: input })),
    fill: (inputs) => change((before) => ({ ...before, ...inputs })),
    clear: () => change(() => ({})),
  };
}
