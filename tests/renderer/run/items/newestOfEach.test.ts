import { describe, expect, it } from 'vitest';
import { newestOfEach } from '../../../../renderer/run/items/newestOfEach.ts';

describe('newestOfEach', () => {
  it('still counts the carbon monoxide of the first sample while the second has only its oxygen', () => {
    const readings = [
      { quantity: 'o2DryVolPct', readingId: 'o2-1' },
      { quantity: 'coPpm', readingId: 'co-1' },
      { quantity: 'o2DryVolPct', readingId: 'o2-2' },
    ] as const;
    expect([...newestOfEach(readings)].sort()).toEqual(['co-1', 'o2-2']);
    expect(newestOfEach([]).size).toBe(0);
  });
});
