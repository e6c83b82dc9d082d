/** Field case F-14: a fifteen-thousand zone on a thirty-thousand minimum. */
import { describe, expect, it } from 'vitest';
import { zoneVersusMinimumFire } from '../../domain/judgement/site/zoneVersusMinimumFire.ts';
import { unwrap } from '../../domain/result.ts';

const KW_PER_BTU_H = 0.29307107e-3;

describe('F-14', () => {
  const zone = unwrap(
    zoneVersusMinimumFire({ maxInputKw: 150_000 * KW_PER_BTU_H, turndown: 5, openZonesKw: [25 * 610 * KW_PER_BTU_H] }),
  );

  it('makes 30,000 Btu/h at least for a zone of 15,250: it will cycle', () => {
    expect(zone.lowestFireKw / KW_PER_BTU_H).toBeCloseTo(30_000, 3);
    expect(zone.willCycle).toBe(true);
  });

  it('can’t hold high fire on it either', () => {
    expect(zone.holdsHighFire).toBe(false);
    const open = unwrap(zoneVersusMinimumFire({ maxInputKw: 44, turndown: 5, openZonesKw: [30, 20] }));
    expect(open).toMatchObject({ willCycle: false, holdsHighFire: true });
  });
});
