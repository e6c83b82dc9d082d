/** What is typed into the worksheets of this tab: there again when one comes back, gone when the person signs out. */
import type { TypedInputs } from './evaluate.ts';

type Memory = Pick<Storage, 'getItem' | 'setItem' | 'removeItem'>;

const PREFIX = 'lightoff.worksheet.';

export function readKept(memory: Memory, worksheetKey: string): TypedInputs | null {
  const text = memory.getItem(PREFIX + worksheetKey);
  if (text === null) return null;
  try {
    const kept: unknown = JSON.parse(text);
    if (typeof kept !== 'object' || kept === null) return null;
    return Object.fromEntries(Object.entries(kept).filter(([, input]) => isTypedInput(input)));
  } catch {
    return null;
  }
}

export function keep(memory: Memory, worksheetKey: string, inputs: TypedInputs): void {
  if (Object.keys(inputs).length === 0) memory.removeItem(PREFIX + worksheetKey);
  else memory.setItem(PREFIX + worksheetKey, JSON.stringify(inputs));
}

export function forgetWorksheets(memory: Storage): void {
  const keys = Array.from({ length: memory.length }, (_, index) => memory.key(index));
  for (const key of keys) if (key?.startsWith(PREFIX)) memory.removeItem(key);
}

function isTypedInput(input: unknown): boolean {
  return (
    typeof input === 'object' &&
    input !== null &&
    'text' in input &&
    typeof input.text === 'string' &&
    (!('unit' in input) || typeof input.unit === 'string')
  );
}
