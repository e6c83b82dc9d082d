import { describe, expect, it } from 'vitest';
import { READINESS_ITEMS } from '../../../domain/procedure/readiness.ts';

describe('the readiness list', () => {
  /** The fourteen lines of the readiness call, common practice of the trade, no single source. */
  const asked = [
    'access',
    'boiler-known',
    'fuel-on-site',
    'gas-live',
    'gas-load',
    'power',
    'vent',
    'condensate',
    'water',
    'controls',
    'heat-load',
    'permit',
    'manual',
    'technician',
  ];

  it('asks every line of the call, once', () => {
    expect(READINESS_ITEMS.map((item) => item.key)).toEqual(asked);
  });

  it('keeps a firm booking back for what wastes a trip or keeps the burner off, and for nothing else', () => {
    for (const item of READINESS_ITEMS) {
      expect([item.key, item.blocksBooking]).toEqual([item.key, item.hinders === 'visit' || item.hinders === 'firing']);
    }
  });

  it('says what to write down, with units where there is a number', () => {
    expect(READINESS_ITEMS.filter((item) => item.note === '')).toEqual([]);
    expect(READINESS_ITEMS.find((item) => item.key === 'gas-load')?.note).toMatch(/kW or Btu\/h.*m³\/h or ft³\/h/);
  });
});
