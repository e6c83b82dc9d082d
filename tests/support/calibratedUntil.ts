/** The calibrations of an instrument that is good until a day, made a year before it; null: never calibrated. */
import type { RecordedCalibration } from '../../domain/procedure/runRecord.ts';

export function calibratedUntil(dueOn: string | null): readonly RecordedCalibration[] {
  if (dueOn === null) return [];
  return [{ calibratedOn: `${Number(dueOn.slice(0, 4)) - 1}${dueOn.slice(4)}`, dueOn, certificate: null }];
}
