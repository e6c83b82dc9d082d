/** What is typed into a line of the paper and not kept yet: it outlives a reload of the window. */
import { useState } from 'react';

type Values = Readonly<Record<string, string>>;

export function useTypedLine(lineKey: string): {
  readonly values: Values;
  readonly set: (name: string, value: string) => void;
  readonly clear: () => void;
} {
  const storageKey = `lightoff.paper.${lineKey}`;
  const [values, setValues] = useState<Values>(() => JSON.parse(sessionStorage.getItem(storageKey) ?? '{}') as Values);
  return {
    values,
    set(name, value) {
      const next = { ...values, [name]: value };
      sessionStorage.setItem(storageKey, JSON.stringify(next));
      setValues(next);
    },
    clear() {
      sessionStorage.removeItem(storageKey);
      setValues({});
    },
  };
}
