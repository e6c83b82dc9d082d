import { describe, expect, it } from 'vitest';
import { LABEL_HEIGHT_PX, placeMapLabels } from '../../../renderer/board/map/placeMapLabels.ts';

describe('placeMapLabels', () => {
  it('stands on the right where nothing is in the way', () => {
    expect(placeMapLabels([{ x: 100, y: 100, widthPx: 40 }])).toEqual([{ x: 112, y: 104, anchor: 'start' }]);
  });

  it('goes to another side where a mark or an earlier label stands', () => {
    const [first, second] = placeMapLabels([
      { x: 100, y: 100, widthPx: 40 },
      { x: 125, y: 100, widthPx: 40 },
    ]);
    expect(first?.anchor).not.toBe('start');
    expect(second?.anchor).toBe('start');
    const stacked = placeMapLabels([
      { x: 100, y: 100, widthPx: 40 },
      { x: 100, y: 100, widthPx: 40 },
      { x: 100, y: 100, widthPx: 40 },
    ]);
    expect(new Set(stacked.map(({ x, y, anchor }) => `${x} ${y} ${anchor}`)).size).toBe(3);
    expect(LABEL_HEIGHT_PX).toBeGreaterThan(10);
  });

  it('places every label, however crowded it is', () => {
    const crowd = Array.from({ length: 60 }, (_, index) => ({
      x: 100 + (index % 5),
      y: 100 + (index % 7),
      widthPx: 60,
    }));
    expect(placeMapLabels(crowd)).toHaveLength(60);
  });
});
