import { describe, expect, it } from 'vitest';
import { altitudeHint } from '../../renderer/sites/altitudeHint.ts';

describe('altitudeHint', () => {
  it('should notice feet typed as metres', () => {
    // Field mistake 31: 1600 ft typed as 1600 m, where the neighbours stand at 488 m.
    expect(altitudeHint(1600, [470, 488, 505])).toEqual({ kind: 'feet-typed-as-metres', neighbourM: 488 });
  });

  it('should notice metres typed as feet', () => {
    expect(altitudeHint(500 * 0.3048, [490, 505])).toMatchObject({ kind: 'metres-typed-as-feet' });
  });

  it.each([
    ['near the neighbours', 520, [500]],
    ['without neighbours', 1600, []],
    ['not known', null, [500]],
    ['far off in either unit', 2600, [500]],
  ] as const)('should keep quiet: %s', (_case, altitudeM, neighbours) => {
    expect(altitudeHint(altitudeM, neighbours)).toBeNull();
  });
});
