import { describe, expect, it } from 'vitest';
import {
  type FloorZone,
  floorSurfaceLimit,
  US_FLOOR_SURFACE_LIMIT_C,
} from '../../../../domain/hydronics/emitters/floorSurfaceLimit.ts';
import { unwrap } from '../../../../domain/result.ts';
import { describeRanges } from '../describeRanges.ts';

describe('floorSurfaceLimit', () => {
  // EN 1264 and ISO 11855 as printed in trade pages.
  it.each<[FloorZone, number, number]>([
    ['occupied', 20, 29],
    ['occupied', 18, 27],
    ['occupied', 24, 29],
    ['edge', 20, 35],
    ['edge', 18, 33],
    ['edge', 22, 35],
    ['bathroom', 24, 33],
    ['bathroom', 22, 31],
    ['bathroom', 26, 33],
  ])('%s at %s °C: %s °C', (zone, roomC, limitC) => {
    expect(unwrap(floorSurfaceLimit({ zone, roomC }))).toBe(limitC);
  });

  it('knows the 85 °F of North America', () => {
    expect(US_FLOOR_SURFACE_LIMIT_C).toBeCloseTo(29.444, 3);
  });
});

describeRanges('floorSurfaceLimit', floorSurfaceLimit, { zone: 'edge' as FloorZone, roomC: 20 }, [['roomC', 5, 35]]);
