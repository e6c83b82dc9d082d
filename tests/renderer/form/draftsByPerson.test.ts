/** What was half-typed is found again by who typed it, and by nobody else. */
import { describe, expect, it } from 'vitest';
import { bringDraftsOf } from '../../../renderer/form/draftsByPerson.ts';

describe('drafts at a change of person', () => {
  it('was a bug: the next person on the laptop found the last one’s half-typed boxes', () => {
    const memory = makeMemory();
    bringDraftsOf(memory, 'tobias');
    memory.setItem('lightoff.draft.run-1.high-o2|1', '4.9');
    memory.setItem('lightoff.shell.width', '220');
    bringDraftsOf(memory, 'ines');
    expect(memory.getItem('lightoff.draft.run-1.high-o2|1')).toBeNull();
    memory.setItem('lightoff.draft.run-1.high-o2|1', '5.3');
    bringDraftsOf(memory, 'tobias');
    expect(memory.getItem('lightoff.draft.run-1.high-o2|1')).toBe('4.9');
    bringDraftsOf(memory, 'ines');
    expect(memory.getItem('lightoff.draft.run-1.high-o2|1')).toBe('5.3');
    expect(memory.getItem('lightoff.shell.width')).toBe('220');
  });

  it('stays where it is for the same person, and for whoever was typing before anybody signed in', () => {
    const memory = makeMemory();
    memory.setItem('lightoff.draft.first-run', 'Kittiwake');
    bringDraftsOf(memory, 'maren');
    bringDraftsOf(memory, 'maren');
    expect(memory.getItem('lightoff.draft.first-run')).toBe('Kittiwake');
  });
});

function makeMemory(): Storage {
  const kept = new Map<string, string>();
  return {
    get length() {
      return kept.size;
    },
    key: (index) => [...kept.keys()][index] ?? null,
    getItem: (key) => kept.get(key) ?? null,
    setItem: (key, text) => void kept.set(key, text),
    removeItem: (key) => void kept.delete(key),
    clear: () => kept.clear(),
  };
}
