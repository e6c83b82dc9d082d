import { describe, expect, it } from 'vitest';
import type { Sureness } from '../../../domain/service/serviceRule.ts';
import { latestWhyOf } from '../../../renderer/phone/latestWhy.ts';

describe('latestWhyOf', () => {
  it.each([
    ['agreement', 'A-12', 'by the service agreement A-12'],
    ['agreement', null, 'by the service agreement'],
    ['maker-sheet', null, 'by the maker’s terms'],
    ['date-assumed', null, 'by the maker’s terms, counted from another or a rough date'],
    ['general-rule', null, 'once a year as a general rule'],
  ] satisfies [Sureness, string | null, string][])(
    'does not call it the maker’s terms when somebody else asks: %s %s',
    (sureness, agreementNumber, words) => {
      const cover = { sureness: 'maker-sheet', agreementNumber: null } as const;
      expect(latestWhyOf([{ sureness, agreementNumber }, cover])).toBe(words);
    },
  );

  it('gives no reason where nobody asks', () => expect(latestWhyOf([])).toBeNull());
});
