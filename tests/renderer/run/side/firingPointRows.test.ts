import { describe, expect, it } from 'vitest';
import { drawnSpan, firingPointRows } from '../../../../renderer/run/side/firingPointRows.ts';
import { DAY_START, emptyRecord, reading, withReading } from '../../../support/runRecordBuilder.ts';
import { A_BASIS, anItem, aStep, tinySheet } from '../../../support/tinySheet.ts';

const sheet = tinySheet([aStep('any', [anItem('confirm', 'a')])], {
  limits: [
    { quantity: 'co2DryVolPct', point: 'high', fuel: 'natural-gas', min: 8.5, max: 9.7, basis: A_BASIS },
    { quantity: 'co2DryVolPct', point: null, fuel: null, max: 9.5, basis: A_BASIS },
    { quantity: 'co2DryVolPct', point: 'high', fuel: 'propane', min: 9.8, basis: A_BASIS },
  ],
});

function withCo2(value: number, more: Parameters<typeof reading>[4]) {
  return reading('flue', 'co2DryVolPct', value, DAY_START, { point: 'high', ...more });
}

describe('firingPointRows', () => {
  it('takes the band of this fuel and point, the tighter bound where two are on the sheet', () => {
    const [row] = firingPointRows(sheet, emptyRecord('natural-gas'), 'natural-gas', 'co2DryVolPct');
    expect(row).toMatchObject({ min: 8.5, max: 9.5, samples: [] });
  });

  it('leaves a side open where the sheet does', () => {
    const [row] = firingPointRows(sheet, emptyRecord('natural-gas'), 'natural-gas', 'o2DryVolPct');
    expect(row).toMatchObject({ min: null, max: null });
  });

  it('draws neither replaced readings nor ones over the range of the instrument', () => {
    const record = [
      withCo2(9.1, { sample: 2 }),
      withCo2(9.0, { sample: 1 }),
      withCo2(5, { sample: 3, supersededById: 'x' }),
      withCo2(20, { sample: 4, comparator: '>' }),
    ].reduce(withReading, emptyRecord('natural-gas'));
    const [row] = firingPointRows(sheet, record, 'natural-gas', 'co2DryVolPct');
    expect(row?.samples.map((one) => one.value)).toEqual([9.0, 9.1]);
  });
});

describe('drawnSpan', () => {
  it('holds bands and values, and is nothing without a value', () => {
    const rows = firingPointRows(sheet, emptyRecord('natural-gas'), 'natural-gas', 'co2DryVolPct');
    expect(drawnSpan(rows)).toBeNull();
    const read = firingPointRows(
      sheet,
      withReading(emptyRecord('natural-gas'), withCo2(7, {})),
      'natural-gas',
      'co2DryVolPct',
    );
    const [low, high] = drawnSpan(read) ?? [0, 0];
    expect(low).toBeLessThan(7);
    expect(high).toBeGreaterThan(9.5);
  });
});
