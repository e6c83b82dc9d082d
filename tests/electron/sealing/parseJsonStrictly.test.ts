import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseJsonStrictly } from '../../../electron/sealing/parseJsonStrictly.ts';

describe('parseJsonStrictly', () => {
  it.each([
    ['{"a":1,"a":2}', 'duplicate-key'],
    ['{"a":1,"\\u0061":2}', 'duplicate-key'],
    ['{"x":{"b":[{"c":1,"d":2,"c":3}]}}', 'duplicate-key'],
    ['{"a":"\\ud800"}', 'lone-surrogate'],
    ['{"\\udfff":1}', 'lone-surrogate'],
    ['{"a":1e999}', 'number-out-of-range'],
    ['{"a":-1e999}', 'number-out-of-range'],
    ['{"a":NaN}', 'not-json'],
    ['{"a":Infinity}', 'not-json'],
    ['{"a":1,}', 'not-json'],
    ['{"a":1} x', 'not-json'],
    ['', 'not-json'],
    [`${'['.repeat(100_000)}`, 'nested-too-deeply'],
    [`${'['.repeat(70)}${']'.repeat(70)}`, 'nested-too-deeply'],
  ])('refuses %.40s as %s', (text, code) => {
    const parsed = parseJsonStrictly(text);
    expect(parsed.ok ? null : parsed.error.code).toBe(code);
  });

  it('takes the same key in different objects', () => {
    expect(parseJsonStrictly('[{"a":1},{"a":1,"b":{"a":"x:\\"a\\":"}}]').ok).toBe(true);
  });

  it('should read whatever JSON.stringify writes', () => {
    fc.assert(
      fc.property(fc.jsonValue({ maxDepth: 6 }), (value) => {
        const text = JSON.stringify(value);
        const parsed = parseJsonStrictly(text);
        // A generated string may hold a lone surrogate: that is the only reason to refuse.
        if (!parsed.ok) expect(parsed.error.code).toBe('lone-surrogate');
        else expect(parsed.value).toEqual(JSON.parse(text));
      }),
    );
  });
});
