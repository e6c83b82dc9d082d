import { beforeEach, describe, expect, it } from 'vitest';
import { clearDraft, listDrafts, readDraft, writeDraft } from '../../../../renderer/run/field/drafts.ts';
import { memoryStorage } from '../memoryStorage.ts';

const key = { runId: 'run-1', itemKey: 'high-flue', box: 'o2DryVolPct 1' };

describe('drafts', () => {
  let memory: Storage;
  beforeEach(() => {
    memory = memoryStorage();
  });

  it('keep what was typed until it is cleared', () => {
    expect(readDraft(memory, key)).toBeNull();
    writeDraft(memory, key, '4.');
    expect(readDraft(memory, key)).toBe('4.');
    clearDraft(memory, key);
    expect(readDraft(memory, key)).toBeNull();
  });

  it('are found again by run after a reload', () => {
    writeDraft(memory, key, '4.9');
    writeDraft(memory, { ...key, runId: 'run-2' }, '5.1');
    memory.setItem('something else', 'x');
    expect(listDrafts(memory, 'run-1')).toEqual([key]);
  });

  it('tell boxes, items and runs apart', () => {
    writeDraft(memory, key, '4.9');
    expect(readDraft(memory, { ...key, box: 'o2DryVolPct 2' })).toBeNull();
    expect(readDraft(memory, { ...key, itemKey: 'low-flue' })).toBeNull();
    expect(readDraft(memory, { ...key, runId: 'run-2' })).toBeNull();
  });
});
