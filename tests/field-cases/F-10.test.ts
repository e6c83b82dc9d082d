/**
 * Field case F-10, "new load, old meter": a storage heater was changed for a large instantaneous one: 335 000 Btu/h on
 * a meter that passes 250 ft³/h. The office hears of it before the visit.
 */
import { describe, expect, it } from 'vitest';
import { connectedGasLoad } from '../../domain/judgement/site/connectedGasLoad.ts';
import { parseTyped } from '../../domain/quantity/parseTyped.ts';
import { unwrap } from '../../domain/result.ts';

const M3_PER_FT3 = 0.0283168466;

describe('F-10: new load, old meter', () => {
  const load = unwrap(
    connectedGasLoad({
      loadsKwGross: [200_000, 50_000, 45_000, 40_000].map(
        (btuPerH) => unwrap(parseTyped('connectedLoadKw', String(btuPerH), 'Btu/h')).valueOwn,
      ),
      heatingValueMjPerM3: unwrap(parseTyped('heatingValueMjPerM3', '1000', 'Btu/ft³')).valueOwn,
      meterCapacityM3PerH: 250 * M3_PER_FT3,
    }),
  );

  it('asks 335 ft³/h of a 250 ft³/h meter: 134 %', () => {
    expect(Math.abs(load.rateM3PerH / M3_PER_FT3 - 335)).toBeLessThanOrEqual(0.5);
    expect(Math.abs(load.sharePct - 134)).toBeLessThanOrEqual(0.5);
    expect(load.isOverCapacity).toBe(true);
    expect(load.loadKw / load.capacityKw).toBeCloseTo(load.sharePct / 100, 10);
  });

  it('refuses a load without a heating value', () => {
    expect(connectedGasLoad({ loadsKwGross: [10], heatingValueMjPerM3: 0, meterCapacityM3PerH: 6 }).ok).toBe(false);
  });
});
