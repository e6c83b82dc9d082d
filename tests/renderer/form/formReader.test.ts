import { describe, expect, it } from 'vitest';
import { FormReader } from '../../../renderer/form/FormReader.ts';

describe('a time zone typed into a form', () => {
  it.each([' America/Toronto ', 'UTC', 'europe/paris'])('takes %j', (text) => {
    const reader = new FormReader();
    expect(reader.timeZone('timeZone', text)).toBe(text.trim());
    expect(reader.errors).toEqual({});
  });

  it.each(['America/Torronto', 'Eastern', '25:00'])('says at its field that %j is none', (text) => {
    const reader = new FormReader();
    reader.timeZone('timeZone', text);
    expect(Object.keys(reader.errors)).toEqual(['timeZone']);
  });

  it('leaves the empty one to the contract, which says that it is needed', () => {
    const reader = new FormReader();
    expect(reader.timeZone('timeZone', '  ')).toBe('');
    expect(reader.errors).toEqual({});
  });
});
