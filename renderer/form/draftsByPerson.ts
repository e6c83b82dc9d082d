/**
 * Half-typed words belong to who typed them: at a change of person they are put aside and given back when that person signs
 * in again in this window. Nobody finds, or saves as their own, what another was typing.
 */
const DRAFT = 'lightoff.draft.';
const ASIDE = 'lightoff.aside.';
const OWNER = 'lightoff.drafts-of';

export function bringDraftsOf(memory: Storage, staffId: string): void {
  const before = memory.getItem(OWNER);
  if (before === staffId) return;
  if (before !== null) move(memory, DRAFT, `${ASIDE}${before}.`);
  move(memory, `${ASIDE}${staffId}.`, DRAFT);
  memory.setItem(OWNER, staffId);
}

function move(memory: Storage, from: string, to: string): void {
  const keys = Array.from({ length: memory.length }, (_, index) => memory.key(index) ?? '');
  for (const key of keys.filter((one) => one.startsWith(from))) {
    const text = memory.getItem(key);
    if (text !== null) memory.setItem(to + key.slice(from.length), text);
    memory.removeItem(key);
  }
}
