/** Where one answer turns into another, and the small terms that no published value can tell from nothing. */
import { describe, expect, it } from 'vitest';
import { condensingCheck } from '../../../domain/hydronics/condensing/condensingCheck.ts';
import { radiatorOutput } from '../../../domain/hydronics/emitters/radiatorOutput.ts';
import { reliefHeadroom } from '../../../domain/hydronics/pressure/reliefHeadroom.ts';
import { outdoorForReturn, resetCurve } from '../../../domain/hydronics/reset/resetCurve.ts';
import { waterReserve } from '../../../domain/hydronics/vessel/waterReserve.ts';
import { unwrap } from '../../../domain/result.ts';

describe('condensingCheck', () => {
  it.each([
    { returnC: 50, isCondensing: false, why: 'at the dew point itself nothing condenses' },
    { returnC: 49.995, isCondensing: true, why: 'a hair below it something does' },
  ])('should know that $why', ({ returnC, isCondensing }) => {
    expect(unwrap(condensingCheck({ returnC, dewPointC: 50 }))).toMatchObject({
      isCondensing,
      isGainUseful: isCondensing,
    });
  });
});

describe('radiatorOutput', () => {
  it('should still take the arithmetic mean at a ratio of exactly 0.7 (EN 442; the switch from memory)', () => {
    const radiator = { ratedOutputW: 1000, supplyC: 70, returnC: 55, roomC: 20 };
    expect(radiatorOutput(radiator)).toEqual(radiatorOutput({ ...radiator, mean: 'arithmetic' }));
  });
});

describe('reliefHeadroom', () => {
  it('should be near the edge from the edge on', () => {
    const valve = { reliefSettingBarG: 6, practice: 'europe' } as const;
    const { nearTheEdgeFromBarG } = unwrap(reliefHeadroom({ ...valve, pressureBarG: 1 }));
    // The highest normal pressure of this setting, 5.4 bar, comes first.
    expect(nearTheEdgeFromBarG).toBeGreaterThan(5.4);
    const northAmerican = { reliefSettingBarG: 16, practice: 'north-america' } as const;
    const edge = unwrap(reliefHeadroom({ ...northAmerican, pressureBarG: 1 }));
    expect(edge.nearTheEdgeFromBarG).toBeGreaterThan(edge.highestNormalBarG);
    const small = { reliefSettingBarG: 2, practice: 'north-america' } as const;
    const { nearTheEdgeFromBarG: from, highestNormalBarG } = unwrap(reliefHeadroom({ ...small, pressureBarG: 1 }));
    expect(from).toBeLessThan(highestNormalBarG);
    expect(unwrap(reliefHeadroom({ ...small, pressureBarG: from })).position).toBe('near-the-edge');
  });
});

describe('the reset curve', () => {
  const design = { designSupplyC: 70, designReturnC: 55, designRoomC: 20, designOutdoorC: -15, exponent: 1.3 };

  it('should take no gain as a gain of nothing', () => {
    expect(resetCurve({ ...design, outdoorC: 3 })).toEqual(resetCurve({ ...design, outdoorC: 3, internalGainK: 0 }));
    const wish = { ...design, returnBelowC: 45 };
    expect(outdoorForReturn(wish)).toEqual(outdoorForReturn({ ...wish, internalGainK: 0 }));
    expect(resetCurve({ ...design, designOutdoorC: 19, outdoorC: 19.5 }).ok).toBe(true);
  });

  it('should find the weather of a return that is hardly warmer than the room', () => {
    const wish = { ...design, returnBelowC: 20.5 };
    const found = unwrap(outdoorForReturn(wish));
    if (found.kind !== 'above') throw new Error(found.kind);
    expect(unwrap(resetCurve({ ...design, outdoorC: found.outdoorC })).loadShare).toBeLessThan(0.01);
    expect(unwrap(resetCurve({ ...design, outdoorC: found.outdoorC })).returnC).toBeCloseTo(20.5, 6);
  });
});

describe('waterReserve', () => {
  it('should take a vessel of exactly 15 L as a small one: 20 % of it (EN 12828, from memory)', () => {
    expect(unwrap(waterReserve({ systemVolumeL: 1000, vesselVolumeL: 15 }))).toBe(3);
  });
});
