/** What stands in the boxes of a line of paper: whether any of it would be lost, and what is left of it once some was kept. */
import type { PaperBox } from './paperSlots.ts';

export type TypedValues = Readonly<Record<string, string>>;

/** The time stands there by itself from the line before; a unit and an instrument say nothing without a value. */
export function isLineBegun(values: TypedValues, boxes: readonly PaperBox[]): boolean {
  const names = [...boxes.filter(({ name }) => name !== 'at').map(({ name }) => name), 'reason'];
  return names.some((name) => (values[name] ?? '').trim() !== '');
}

/** What was typed while `sent` was on its way stays; the rest is kept by now. */
export function withoutSent(now: TypedValues, sent: TypedValues): TypedValues {
  return Object.fromEntries(Object.entries(now).filter(([name, value]) => sent[name] !== value));
}
