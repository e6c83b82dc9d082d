import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { PressurePractice } from '../../../../domain/hydronics/pressure/pressureCustoms.ts';
import { highestNormalHotPressure, reliefHeadroom } from '../../../../domain/hydronics/pressure/reliefHeadroom.ts';
import { psiToBar } from '../../../../domain/quantity/conversions.ts';
import { unwrap } from '../../../../domain/result.ts';
import { describeRanges } from '../describeRanges.ts';

function positionPsi(pressurePsi: number): string {
  return unwrap(
    reliefHeadroom({
      pressureBarG: psiToBar(pressurePsi),
      reliefSettingBarG: psiToBar(30),
      practice: 'north-america',
    }),
  ).position;
}
function positionBar(pressureBarG: number, reliefSettingBarG: number): string {
  return unwrap(reliefHeadroom({ pressureBarG, reliefSettingBarG, practice: 'europe' })).position;
}

describe('highestNormalHotPressure', () => {
  it.each([
    [3, 2.5],
    [5, 4.5],
    [5.01, 0.9 * 5.01],
    [10, 9],
  ])('Europe: %s bar valve, %s bar', (reliefSettingBarG, highest) => {
    expect(unwrap(highestNormalHotPressure({ reliefSettingBarG, practice: 'europe' }))).toBeCloseTo(highest, 12);
  });

  it('North America: 90 % at any setting', () => {
    expect(unwrap(highestNormalHotPressure({ reliefSettingBarG: 2, practice: 'north-america' }))).toBeCloseTo(1.8, 12);
  });

  it('always lies below the setting', async () => {
    await fc.assert(
      fc.property(
        fc.double({ min: 1, max: 16, noNaN: true }),
        fc.constantFrom<PressurePractice>('europe', 'north-america'),
        (reliefSettingBarG, practice) => {
          expect(unwrap(highestNormalHotPressure({ reliefSettingBarG, practice }))).toBeLessThan(reliefSettingBarG);
        },
      ),
    );
  });
});

describe('reliefHeadroom', () => {
  it('North America, 30 psi valve: near the edge from 24 psi, outside above 27 psi', () => {
    expect([23.9, 24.1, 26.9, 27.1, 29.1, 31].map(positionPsi)).toEqual([
      'within',
      'near-the-edge',
      'near-the-edge',
      'outside',
      'outside',
      'outside',
    ]);
  });

  it('Europe, 3 bar valve: outside above 2.5 bar, before the edge of 2.6 bar', () => {
    expect([2.4, 2.5, 2.51, 2.7].map((bar) => positionBar(bar, 3))).toEqual(['within', 'within', 'outside', 'outside']);
  });

  it('Europe, 10 bar valve: near the edge only where 10 % is less than 0.4 bar, so never', () => {
    expect([9, 9.01].map((bar) => positionBar(bar, 10))).toEqual(['within', 'outside']);
  });

  it('says how far it is to the valve and where the marks lie', () => {
    const known = unwrap(reliefHeadroom({ pressureBarG: 1.9, reliefSettingBarG: 3, practice: 'europe' }));
    expect(known.headroomBar).toBeCloseTo(1.1, 12);
    expect(known.highestNormalBarG).toBeCloseTo(2.5, 12);
    expect(known.nearTheEdgeFromBarG).toBeCloseTo(2.6, 12);
    const american = unwrap(
      reliefHeadroom({ pressureBarG: 1, reliefSettingBarG: psiToBar(30), practice: 'north-america' }),
    );
    expect(american.nearTheEdgeFromBarG).toBeCloseTo(psiToBar(24), 12);
  });
});

describeRanges(
  'reliefHeadroom',
  reliefHeadroom,
  { pressureBarG: 1.5, reliefSettingBarG: 3, practice: 'europe' as PressurePractice },
  [
    ['pressureBarG', -1, 40],
    ['reliefSettingBarG', 1, 16],
  ],
);
