import { describe, expect, it } from 'vitest';
import { placeAt, snapPointer, toScale, xOf } from '../../../renderer/board/boardScale.ts';

const WEEK = ['2026-03-02', '2026-03-03', '2026-03-04', '2026-03-05', '2026-03-06'];

describe('toScale', () => {
  it('should fit a week into the room there is', () => {
    const scale = toScale([], WEEK, 'week', 600);
    expect(scale.dayWidth * WEEK.length).toBeCloseTo(600);
    expect(scale.isCompact).toBe(true);
  });

  it('should scroll rather than draw days nobody can read, and not draw them wider than by the hour', () => {
    expect(toScale([], WEEK, 'week', 200).dayWidth).toBe(96);
    expect(toScale([], WEEK, 'week', 9000).pxPerMin).toBe(toScale([], WEEK, 'hours', 600).pxPerMin);
  });

  it('should find the place of a minute again', () => {
    for (const view of ['day', 'week', 'hours'] as const) {
      const scale = toScale([], WEEK, view, 600);
      const { on, minute } = placeAt(scale, xOf(scale, 3, 615));
      expect(on).toBe('2026-03-05');
      expect(minute).toBeCloseTo(615);
    }
  });
});

describe('snapPointer', () => {
  it('should keep the time of a visit that is taken to another person or day in a week seen at once', () => {
    const scale = toScale([], WEEK, 'week', 600);
    expect(snapPointer(481 + 20, scale, 481)).toBe(481);
    expect(snapPointer(481 + 90, scale, 481)).toBe(570);
  });

  it('should go by quarters where there is room for them', () => {
    expect(snapPointer(498, toScale([], WEEK, 'hours', 600), 480)).toBe(495);
  });
});
