/** Blending tap water with demineralised water, at its edge. */
import { expect, it } from 'vitest';
import { unwrap } from '../../../domain/result.ts';
import { demineralisedShare } from '../../../domain/water/demineralisedShare.ts';

it('should add nothing to water that has nothing in it', () => {
  const blend = unwrap(demineralisedShare({ raw: 0, demineralised: 0, target: 0, volumeL: 100 }));
  expect(blend).toEqual({ share: 0, demineralisedL: 0 });
});
