import { describe, expect, it } from 'vitest';
import { steadyRuleWords } from '../../../../renderer/run/words/steadyRuleWords.ts';

describe('steadyRuleWords', () => {
  it('breaks a line between the parts of the rule only, never between a number and its unit', () => {
    const words = steadyRuleWords({
      minSamples: 2,
      apartS: 60,
      o2Points: 0.2,
      coPpm: 5,
      coPct: 10,
      flueK: 2,
      basis: { kind: 'common-practice', source: '' },
    });
    // Where a browser may break: at plain spaces.
    expect(words.split(' ').map((part) => part.replaceAll('\u00a0', ' '))).toEqual([
      '2 samples,',
      '60 s apart,',
      'within 0.2 % O₂,',
      '5 ppm or 10 % CO,',
      '2 K flue',
    ]);
  });
});
