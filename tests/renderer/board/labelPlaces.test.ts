import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { placeLabels } from '../../../renderer/board/labelPlaces.ts';

describe('placeLabels', () => {
  it('should put a label at its visit where there is room, and turn and turn about', () => {
    expect(placeLabels([10, 60], 130)).toEqual([
      { lane: 0, left: 10, width: 120 },
      { lane: 1, left: 60, width: 70 },
    ]);
  });

  it('should move the label of a late visit to where its words can be read', () => {
    expect(placeLabels([110], 130)).toEqual([{ lane: 0, left: 72, width: 58 }]);
  });

  it('should never lay one over another in its line, nor beyond the day, however many there are', () => {
    const day = fc.record({
      starts: fc
        .array(fc.integer({ min: 0, max: 200 }), { maxLength: 14 })
        .map((list) => list.toSorted((a, b) => a - b)),
      width: fc.integer({ min: 200, max: 330 }),
    });
    fc.assert(
      fc.property(day, ({ starts, width }) => {
        const places = placeLabels(starts, width);
        expect(places).toHaveLength(starts.length);
        for (const lane of [0, 1]) {
          let end = 0;
          for (const place of places.filter((one) => one.lane === lane)) {
            expect(place.left).toBeGreaterThanOrEqual(end - 1e-6);
            expect(place.width).toBeGreaterThan(0);
            end = place.left + place.width;
          }
          expect(end).toBeLessThanOrEqual(width + 1e-6);
        }
      }),
    );
  });
});
