import { describe, expect, it } from 'vitest';
import { flowVelocity } from '../../../../domain/hydronics/pipes/flowVelocity.ts';
import {
  AIR_CARRYING_M_PER_S,
  britishVelocityLimit,
  copperErosionLimit,
  FLOOR_LOOP,
  QUIET_PIPEWORK,
} from '../../../../domain/hydronics/pipes/velocityLimits.ts';
import { unwrap } from '../../../../domain/result.ts';
import { describeRanges } from '../describeRanges.ts';

describe('velocity limits', () => {
  // Copper handbook: 8, 5, 2–3 ft/s.
  it.each([
    [10, 2.4],
    [30, 2.4],
    [30.1, 1.5],
    [60, 1.5],
    [60.1, 0.6],
    [90, 0.6],
  ])('copper at %s °C: %s m/s', (waterC, limit) => {
    expect(unwrap(copperErosionLimit({ waterC }))).toBe(limit);
  });

  // BS 6700 as quoted.
  it.each([
    [10, 3],
    [50, 3],
    [50.1, 2.5],
    [70, 2.5],
    [70.1, 2],
    [90, 2],
  ])('British at %s °C: %s m/s', (waterC, limit) => {
    expect(unwrap(britishVelocityLimit({ waterC }))).toBe(limit);
  });

  it('call 12 L/min of 60 °C water through 15×0.7 copper too fast for quiet pipework (F7)', () => {
    const velocityMPerS = unwrap(flowVelocity({ flowLPerMin: 12, innerDiameterMm: 13.6 }));
    expect(velocityMPerS).toBeGreaterThan(QUIET_PIPEWORK.velocityMPerS);
  });

  it('are as printed elsewhere', () => {
    expect(QUIET_PIPEWORK).toEqual({ velocityMPerS: 1.2, lossPaPerM: [100, 400] });
    expect(AIR_CARRYING_M_PER_S).toBe(0.6);
    expect(FLOOR_LOOP).toEqual({ leastVelocityMPerS: 0.15, mostLossKpa: 20, mostLengthM: 120 });
  });
});

describeRanges('copperErosionLimit', copperErosionLimit, { waterC: 40 }, [['waterC', 0, 120]]);
describeRanges('britishVelocityLimit', britishVelocityLimit, { waterC: 40 }, [['waterC', 10, 90]]);
