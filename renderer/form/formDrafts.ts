/** What somebody was typing when the window was reloaded or the screen left: kept per form until it is saved or thrown away. */

export type KeptDraft<V> = {
  readonly values: V;
  /** The record the form started from, as text: tells whether it changed meanwhile. */
  readonly base: string;
};

const PREFIX = 'lightoff.draft.';

export function readDraft<V extends object>(key: string, initial: V): KeptDraft<V> | null {
  const text = window.sessionStorage.getItem(PREFIX + key);
  if (text === null) return null;
  try {
    const kept: unknown = JSON.parse(text);
    if (typeof kept !== 'object' || kept === null || !('values' in kept) || !('base' in kept)) return null;
    // A draft of an older form may lack fields: the rest comes from the record.
    return { values: { ...initial, ...(kept.values as Partial<V>) }, base: String(kept.base) };
  } catch {
    return null;
  }
}

export function keepDraft<V extends object>(key: string, draft: KeptDraft<V>): void {
  window.sessionStorage.setItem(PREFIX + key, JSON.stringify(draft));
}

export function dropDraft(key: string): void {
  window.sessionStorage.removeItem(PREFIX + key);
}
