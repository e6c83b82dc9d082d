/** The drawing against the great circle (haversine, held against published distances in tests/domain/schedule/travel.test.ts). */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distanceKm } from '../../../domain/schedule/travel.ts';
import { frameOf, scaleBarOf } from '../../../renderer/board/map/mapFrame.ts';

const BOX = { width: 760, height: 520, padding: 56 };

describe('frameOf', () => {
  it('keeps distances of a firm’s own ground to little more than a percent, up to 60 degrees and across the date line', () => {
    const ground = fc.record({
      latitude: fc.double({ min: -60, max: 60, noNaN: true }),
      longitude: fc.double({ min: -180, max: 180, noNaN: true }),
      others: fc.array(
        fc.record({
          north: fc.double({ min: -0.4, max: 0.4, noNaN: true }),
          east: fc.double({ min: -0.4, max: 0.4, noNaN: true }),
        }),
        { minLength: 1, maxLength: 6 },
      ),
    });
    fc.assert(
      fc.property(ground, ({ latitude, longitude, others }) => {
        const round = (degrees: number): number => ((degrees + 540) % 360) - 180;
        const places = [
          { latitude, longitude },
          ...others.map(({ north, east }) => ({ latitude: latitude + north, longitude: round(longitude + east) })),
        ];
        const frame = frameOf(places, BOX);
        if (frame === null) throw new Error('places are there');
        const points = places.map(frame.pointOf);
        for (const { x, y } of points) {
          expect(x).toBeGreaterThan(BOX.padding - 0.01);
          expect(x).toBeLessThan(BOX.width - BOX.padding + 0.01);
          expect(y).toBeGreaterThan(BOX.padding - 0.01);
          expect(y).toBeLessThan(BOX.height - BOX.padding + 0.01);
        }
        const [first] = points;
        const [home] = places;
        if (first === undefined || home === undefined) throw new Error('places are there');
        points.forEach((point, index) => {
          const place = places[index];
          if (place === undefined) return;
          const drawnKm = Math.hypot(point.x - first.x, point.y - first.y) / frame.pxPerKm;
          expect(Math.abs(drawnKm - distanceKm(home, place))).toBeLessThan(0.013 * distanceKm(home, place) + 1e-6);
        });
      }),
    );
  });

  it('has north at the top, east on the right, and stands still for one place alone', () => {
    const frame = frameOf(
      [
        { latitude: 44.6, longitude: -64 },
        { latitude: 44.7, longitude: -63.9 },
      ],
      BOX,
    );
    const south = frame?.pointOf({ latitude: 44.6, longitude: -64 });
    const north = frame?.pointOf({ latitude: 44.7, longitude: -63.9 });
    expect((north?.y ?? 0) < (south?.y ?? 0) && (north?.x ?? 0) > (south?.x ?? 0)).toBe(true);
    const alone = frameOf([{ latitude: 44.6, longitude: -64 }], BOX);
    expect(alone?.pointOf({ latitude: 44.6, longitude: -64 })).toEqual({ x: 380, y: 260 });
    expect(frameOf([], BOX)).toBeNull();
  });
});

describe('scaleBarOf', () => {
  it.each([
    [10, 160, 10, 100],
    [32, 160, 5, 160],
    [33, 160, 2, 66],
    [400, 160, 0.2, 80],
    [0.4, 160, 200, 80],
  ])('at %f px to the unit and at most %f px is %f long', (pxPerUnit, mostPx, length, px) => {
    const bar = scaleBarOf(pxPerUnit, mostPx);
    expect(bar.length).toBeCloseTo(length, 9);
    expect(bar.px).toBeCloseTo(px, 9);
  });
});
