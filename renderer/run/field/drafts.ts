/**
 * What was typed but is not saved yet, kept in the window's session memory: a reload or a refused save loses no character.
 * The operation's reply is the only thing that clears a draft.
 */
export type DraftMemory = Pick<Storage, 'getItem' | 'setItem' | 'removeItem'>;

export type DraftKey = {
  readonly runId: string;
  readonly itemKey: string;
  /** Which box of the item: a quantity with its sample, `reason`, `name`. */
  readonly box: string;
};

export function readDraft(memory: DraftMemory, key: DraftKey): string | null {
  return memory.getItem(memoryKey(key));
}

export function writeDraft(memory: DraftMemory, key: DraftKey, text: string): void {
  memory.setItem(memoryKey(key), text);
}

export function clearDraft(memory: DraftMemory, key: DraftKey): void {
  memory.removeItem(memoryKey(key));
}

/** Every box of this run whose text never reached the store; a reload shows them again. */
export function listDrafts(memory: Storage, runId: string): readonly DraftKey[] {
  const prefix = `lightoff.draft.${runId}.`;
  const found: DraftKey[] = [];
  for (let index = 0; index < memory.length; index += 1) {
    const key = memory.key(index);
    const [itemKey, box] = key?.startsWith(prefix) ? key.slice(prefix.length).split('|') : [];
    if (itemKey !== undefined && box !== undefined) found.push({ runId, itemKey, box });
  }
  return found;
}

function memoryKey({ runId, itemKey, box }: DraftKey): string {
  return `lightoff.draft.${runId}.${itemKey}|${box}`;
}
