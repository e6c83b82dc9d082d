import { describe, expect, it } from 'vitest';
import type { PaperBox } from '../../../renderer/paper/paperSlots.ts';
import { isLineBegun, withoutSent } from '../../../renderer/paper/typedValues.ts';

const BOXES: readonly PaperBox[] = [
  { kind: 'choice', name: 'value', label: 'Part', options: [] },
  { kind: 'text', name: 'number', label: 'Number' },
  { kind: 'time', name: 'at', label: 'Time' },
];

describe('isLineBegun', () => {
  it('does not let a half-typed line go with “nothing more on this list”', () => {
    expect(isLineBegun({ number: 'GV-1' }, BOXES)).toBe(true);
    expect(isLineBegun({ value: 'gas-valve', number: '' }, BOXES)).toBe(true);
    expect(isLineBegun({ reason: 'no list on the paper' }, BOXES)).toBe(true);
  });

  it('is not begun by a time or blanks', () => {
    expect(isLineBegun({}, BOXES)).toBe(false);
    expect(isLineBegun({ at: '13:05', number: ' ', unit: '°F' }, BOXES)).toBe(false);
  });
});

describe('withoutSent', () => {
  it('leaves what was typed while the line before was being kept', () => {
    const sent = { value: 'gas-valve', number: 'GV-1', at: '13:05' };
    expect(withoutSent({ ...sent, number: 'GV-2', serial: '7' }, sent)).toEqual({ number: 'GV-2', serial: '7' });
    expect(withoutSent(sent, sent)).toEqual({});
  });
});
