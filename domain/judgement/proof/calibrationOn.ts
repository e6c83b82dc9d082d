/** Which calibration of an instrument counts on a day: the newest made by then. What was done to it later says nothing of it. */
import type { RecordedCalibration } from '../../procedure/runRecord.ts';

/** null: it had none by that day. Of two of one day the one recorded later counts. */
export function calibrationOn<C extends Pick<RecordedCalibration, 'calibratedOn'>>(
  calibrations: readonly C[],
  day: string,
): C | null {
  return calibrations
    .filter((one) => one.calibratedOn <= day)
    .reduce<C | null>((last, one) => (last === null || one.calibratedOn >= last.calibratedOn ? one : last), null);
}
