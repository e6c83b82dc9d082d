import { describe, expect, it } from 'vitest';
import { parseTyped } from '../../../../domain/quantity/parseTyped.ts';
import { meaningText } from '../../../../renderer/run/field/meaningText.ts';

describe('meaningText', () => {
  it('writes each meaning of an ambiguous text so that it has only that one', () => {
    const asked = parseTyped('conductivityUsPerCm', '1,234', 'µS/cm');
    if (asked.ok || asked.error.code !== 'ambiguous') throw new Error('expected an ambiguous text');
    expect(asked.error.meanings).toHaveLength(2);
    for (const meaning of asked.error.meanings) {
      const read = parseTyped('conductivityUsPerCm', meaningText(meaning), 'µS/cm');
      expect(read.ok && read.value.valueOwn).toBe(meaning.valueOwn);
    }
  });
});
