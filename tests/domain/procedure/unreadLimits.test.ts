import { describe, expect, it } from 'vitest';
import { unreadLimits } from '../../../domain/procedure/unreadLimits.ts';
import { readShippedSheets } from '../../support/shippedSheets.ts';
import { A_BASIS, anItem, aStep, tinySheet } from '../../support/tinySheet.ts';

const limit = (quantity: string, point: string | null) => ({ quantity, point, max: 1, basis: A_BASIS });
const firingPoints = [
  { key: 'high', label: 'High fire', settleS: 300 },
  { key: 'mid', label: 'Half load', settleS: 300 },
];
const steps = [
  aStep('combustion', [
    anItem('series', 'flue', { firingPoint: 'high', quantities: ['coPpm', 'o2DryVolPct'], optional: ['flueGasC'] }),
    anItem('read', 'inlet', { quantity: 'inletPressureMbarG', point: 'static' }),
    anItem('read', 'ph', { quantity: 'waterPh' }),
  ]),
];
const found = (limits: readonly object[], overrides = {}) =>
  unreadLimits(tinySheet(steps, { firingPoints, limits, ...overrides })).map(
    ({ path, message }) => `${path} ${message}`,
  );

describe('limits that nothing is held against', () => {
  it('has nothing against a limit where its quantity is read, needed or not, in any of the lists', () => {
    const limits = [
      limit('coPpm', 'high'),
      limit('flueGasC', 'high'),
      limit('inletPressureMbarG', 'static'),
      limit('waterPh', null),
      limit('coPpm', null),
    ];
    expect(found(limits)).toEqual([]);
    const service = [aStep('again', [anItem('series', 'flue', { firingPoint: 'mid', quantities: ['coPpm'] })])];
    expect(found([limit('coPpm', 'mid')], { service })).toEqual([]);
  });

  it('names a firing point that no step reads, by its words', () => {
    expect(found([limit('coPpm', 'high'), limit('coPpm', 'mid')])).toEqual([
      'limits.1.point no step of this sheet reads anything at “Half load”: the limit is never used',
    ]);
  });

  it('names a quantity that is read elsewhere, and one that is read nowhere', () => {
    expect(found([limit('inletPressureMbarG', 'high'), limit('glycolPct', null)])).toEqual([
      'limits.0.point no step of this sheet reads Gas inlet pressure at “High fire”: the limit is never used',
      'limits.1.quantity no step of this sheet reads Glycol: the limit is never used',
    ]);
  });

  it('takes what is worked out as read wherever anything is', () => {
    expect(found([limit('coAirFreePpm', 'high'), limit('coCo2Ratio', null)])).toEqual([]);
    expect(found([limit('coAirFreePpm', 'mid')])).toHaveLength(1);
  });

  it('finds none in the sheets that come with the program', () => {
    expect(readShippedSheets().flatMap((sheet) => unreadLimits(sheet))).toEqual([]);
  });
});
