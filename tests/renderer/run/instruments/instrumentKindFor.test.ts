import { describe, expect, it } from 'vitest';
import { NEEDS_INSTRUMENT } from '../../../../domain/judgement/quantityGroups.ts';
import { instrumentKindFor } from '../../../../renderer/run/instruments/instrumentKindFor.ts';

/** Worked out from others, never typed with an instrument in hand. */
const DERIVED = ['coCo2Ratio'];

describe('instrumentKindFor', () => {
  it('knows the kind for every number that only an instrument can give', () => {
    const typed = [...NEEDS_INSTRUMENT].filter((quantity) => !DERIVED.includes(quantity));
    expect(typed.filter((quantity) => instrumentKindFor(quantity) === null)).toEqual([]);
  });

  it('asks for none where a display or a dial is read', () => {
    expect(instrumentKindFor('burnerPowerPct')).toBeNull();
    expect(instrumentKindFor('meterDialM3')).toBeNull();
  });
});
