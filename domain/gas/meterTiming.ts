/**
 * Gas rate by timing the meter, as an interval: a thumb on a stopwatch is part of the reading.
 *
 * Formula  rate = 3600·turns·dial/seconds; lowest with seconds + u, highest with seconds − u
 * Units    dial in m³ per turn; s; m³/h as metered (not yet at base conditions)
 * Valid    0.0001–10 m³ per turn; 0.1–1000 turns; 5–7200 s; u 0–2 s, by default ±1 s
 *          One appliance only, steady full fire, no pilot of another one
 * Errors   ±1 s on 17 s is ±6 %: at least two turns or 120 s (`isLongEnough`). A ½ ft³ dial taken for a 2 ft³ one is a
 *          factor of 4
 * Source   arithmetic; durations as the US fuel-gas handbook and UK practice recommend
 * Checked  tests/checks/gas/meterTiming.test.ts
 */
import type { M3PerH, Seconds } from '../quantity/units.ts';
import { checkRange, err, type OutOfRange, ok, type Result } from '../result.ts';

/** Starting and stopping by hand, both ends together. */
const DEFAULT_TIMING_UNCERTAINTY_S: Seconds = 1;

export type MeterTiming = {
  readonly dialM3: number;
  readonly turns: number;
  readonly elapsedS: Seconds;
  readonly timingUncertaintyS?: Seconds | undefined;
};

export type MeteredRate = {
  readonly rateM3PerH: M3PerH;
  readonly lowestM3PerH: M3PerH;
  readonly highestM3PerH: M3PerH;
  /** Two turns or two minutes. */
  readonly isLongEnough: boolean;
};

export function meteredRate(input: MeterTiming): Result<MeteredRate, OutOfRange> {
  const { dialM3, turns, elapsedS, timingUncertaintyS = DEFAULT_TIMING_UNCERTAINTY_S } = input;
  const outside =
    checkRange('dialM3', dialM3, 0.0001, 10) ??
    checkRange('turns', turns, 0.1, 1000) ??
    checkRange('elapsedS', elapsedS, 5, 7200) ??
    checkRange('timingUncertaintyS', timingUncertaintyS, 0, 2);
  if (outside) return err(outside);
  const rateOver = (seconds: number) => (3600 * turns * dialM3) / seconds;
  return ok({
    rateM3PerH: rateOver(elapsedS),
    lowestM3PerH: rateOver(elapsedS + timingUncertaintyS),
    highestM3PerH: rateOver(elapsedS - timingUncertaintyS),
    isLongEnough: turns >= 2 || elapsedS >= 120,
  });
}
