import { checkRange, err, type OutOfRange, ok, type Result } from '../../result.ts';

/**
 * Whether a circuit has settled enough for its flow and temperatures to be one heat output.
 *
 * Formula  both temperatures drift by less than 0.5 K/min
 * Units    K/min
 * Valid    drifts up to ±60 K/min; outside it an error, never an answer
 * Source   common practice, no source
 * Checked  tests/domain/hydronics/output/circuitSteadiness.test.ts
 */
export function isCircuitSteady(drift: {
  readonly supplyDriftKPerMin: number;
  readonly returnDriftKPerMin: number;
}): Result<boolean, OutOfRange> {
  const { supplyDriftKPerMin, returnDriftKPerMin } = drift;
  const refused =
    checkRange('supplyDriftKPerMin', supplyDriftKPerMin, -60, 60) ??
    checkRange('returnDriftKPerMin', returnDriftKPerMin, -60, 60);
  if (refused) return err(refused);
  return ok(Math.max(Math.abs(supplyDriftKPerMin), Math.abs(returnDriftKPerMin)) < STEADY_DRIFT_K_PER_MIN);
}

const STEADY_DRIFT_K_PER_MIN = 0.5;
