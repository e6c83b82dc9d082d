import { describe, expect, it } from 'vitest';
import { EMITTER_VOLUMES_L_PER_KW, type VolumeEmitter } from '../../../../domain/hydronics/volume/emitterVolumes.ts';
import {
  britishDomesticVolume,
  systemVolumeEstimate,
} from '../../../../domain/hydronics/volume/systemVolumeEstimate.ts';
import { findTube, TUBES } from '../../../../domain/hydronics/volume/tubes.ts';
import { tubeVolume } from '../../../../domain/hydronics/volume/tubeVolume.ts';
import { unwrap } from '../../../../domain/result.ts';
import { describeRanges } from '../describeRanges.ts';

describe('system volume', () => {
  it('takes the litres per kW of the trade sheet', () => {
    expect(EMITTER_VOLUMES_L_PER_KW).toEqual({
      'perimeter-or-convectors': 6,
      'fan-coils-or-air-handlers': 8,
      'steel-panels': 11,
      'cast-iron': 14,
      'distant-or-large': 20,
      floor: 23,
      'small-domestic-or-microbore': 6,
    });
  });

  it('states its ±40 %', () => {
    const estimate = unwrap(systemVolumeEstimate({ outputKw: 10, emitter: 'floor' }));
    expect(estimate.litres).toBeCloseTo(230, 12);
    expect(estimate.leastL).toBeCloseTo(138, 12);
    expect(estimate.mostL).toBeCloseTo(322, 12);
  });

  it('builds up the older British way: 9 L/kW and the exchanger', () => {
    expect(unwrap(britishDomesticVolume({ outputKw: 20, exchangerL: 4 }))).toBe(184);
  });
});

describe('tubes', () => {
  it('are found by their key, each one once', () => {
    expect(new Set(TUBES.map((tube) => tube.key)).size).toBe(TUBES.length);
    expect(TUBES).toHaveLength(28);
    expect(findTube('pex-16x2')).toMatchObject({ label: 'PEX 16×2 mm', innerDiameterMm: 12, material: 'pex' });
    expect(findTube('copper-m-3/4')).toMatchObject({ fromMemory: true });
    expect(findTube('lead-1')).toBeUndefined();
  });
});

describeRanges('systemVolumeEstimate', systemVolumeEstimate, { outputKw: 24, emitter: 'floor' as VolumeEmitter }, [
  ['outputKw', 0, 10_000],
]);
describeRanges('britishDomesticVolume', britishDomesticVolume, { outputKw: 24, exchangerL: 4 }, [
  ['outputKw', 0, 200],
  ['exchangerL', 0, 500],
]);
describeRanges('tubeVolume', tubeVolume, { innerDiameterMm: 20, lengthM: 10 }, [
  ['innerDiameterMm', 1, 1000],
  ['lengthM', 0, 100_000],
]);
