import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distanceKm, travelMinutes, USUAL_TRAVEL } from '../../../domain/schedule/travel.ts';

const place = fc.record({
  latitude: fc.double({ min: -90, max: 90, noNaN: true }),
  longitude: fc.double({ min: -180, max: 180, noNaN: true }),
});

describe('travel', () => {
  /** Second way: on a sphere a degree of a great circle is πR/180, with R the IUGG mean radius of 6371.0088 km. */
  const kmPerDegree = (Math.PI * 6371.0088) / 180;
  /** Only rounding separates the two ways. */
  const roundingKm = 1e-6;

  it.each([
    ['one degree along a meridian', { latitude: 44, longitude: -64 }, { latitude: 45, longitude: -64 }, 1],
    ['ninety degrees along the equator', { latitude: 0, longitude: 0 }, { latitude: 0, longitude: 90 }, 90],
    ['across the date line', { latitude: 0, longitude: 179.5 }, { latitude: 0, longitude: -179.5 }, 1],
    ['pole to pole', { latitude: 90, longitude: 12 }, { latitude: -90, longitude: 77 }, 180],
  ])('measures %s (arc length by hand)', (_what, from, to, degrees) => {
    expect(Math.abs(distanceKm(from, to) - degrees * kmPerDegree)).toBeLessThan(roundingKm);
  });

  it('rounds minutes up and has none for a place that is not on the map', () => {
    const from = { latitude: 44.61, longitude: -64.02 };
    expect(travelMinutes(from, from, USUAL_TRAVEL)).toBe(0);
    // 0.1° along a meridian: 11.12 km, × 1.3 at 40 km/h is 21.7 min.
    expect(travelMinutes(from, { latitude: 44.71, longitude: -64.02 }, USUAL_TRAVEL)).toBe(22);
    expect(travelMinutes(from, null, USUAL_TRAVEL)).toBeNull();
  });

  it('is the same both ways, never negative, never further than half round the Earth', () => {
    fc.assert(
      fc.property(place, place, (from, to) => {
        const km = distanceKm(from, to);
        expect(km).toBeGreaterThanOrEqual(0);
        expect(km).toBeLessThanOrEqual(180 * kmPerDegree + roundingKm);
        expect(Math.abs(km - distanceKm(to, from))).toBeLessThan(roundingKm);
      }),
    );
  });
});
