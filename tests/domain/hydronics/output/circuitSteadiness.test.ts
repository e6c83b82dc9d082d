import { describe, expect, it } from 'vitest';
import { isCircuitSteady } from '../../../../domain/hydronics/output/circuitSteadiness.ts';
import { describeRanges } from '../describeRanges.ts';

describe('isCircuitSteady', () => {
  // Common practice, no source: both temperatures drift by less than 0.5 K/min.
  it.each([
    [0.49, -0.49, true],
    [0.5, 0, false],
    [0, -0.5, false],
    [0, 0, true],
  ])('%s and %s K/min: %s', (supplyDriftKPerMin, returnDriftKPerMin, value) => {
    expect(isCircuitSteady({ supplyDriftKPerMin, returnDriftKPerMin })).toEqual({ ok: true, value });
  });
});

describeRanges(
  'isCircuitSteady',
  isCircuitSteady,
  {
    supplyDriftKPerMin: 0,
    returnDriftKPerMin: 0,
  },
  [
    ['supplyDriftKPerMin', -60, 60],
    ['returnDriftKPerMin', -60, 60],
  ],
);
