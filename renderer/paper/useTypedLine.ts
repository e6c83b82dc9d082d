/** What is typed into a line of the paper and not kept yet: it outlives a reload of the window. */
import { useRef, useState } from 'react';
import { type TypedValues, withoutSent } from './typedValues.ts';

export function useTypedLine(lineKey: string): {
  readonly values: TypedValues;
  readonly set: (name: string, value: string) => void;
  /** Of what was kept; what was typed since stays. */
  readonly clear: (sent: TypedValues) => void;
} {
  const storageKey = `lightoff.paper.${lineKey}`;
  const [values, setValues] = useState<TypedValues>(
    () => JSON.parse(sessionStorage.getItem(storageKey) ?? '{}') as TypedValues,
  );
  const latest = useRef(values);
  const show = (next: TypedValues) => {
    latest.current = next;
    if (Object.keys(next).length === 0) sessionStorage.removeItem(storageKey);
    else sessionStorage.setItem(storageKey, JSON.stringify(next));
    setValues(next);
  };
  return {
    values,
    set: (name, value) => show({ ...latest.current, [name]: value }),
    clear: (sent) => show(withoutSent(latest.current, sent)),
  };
}
