/** The calibration of an instrument that counted for a reading: the newest made by the reading's day at the site. */
import { calibrationOn } from '../../../domain/judgement/proof/calibrationOn.ts';
import { siteDay } from '../../../domain/judgement/proof/siteDay.ts';
import type { RecordedCalibration } from '../../../domain/procedure/runRecord.ts';
import type { Revealed } from '../../sealing/revealRecord.ts';
import type { AnyRecord } from '../../sealing/sealedRecord.ts';

type Instrument = Revealed<AnyRecord>['run']['instruments'][number];

export function dayAtSite(instant: string, timeZone: string): string {
  return siteDay(Date.parse(instant), timeZone);
}

/** null: it had none by then. */
export function calibrationOfReading(
  instrument: Instrument,
  measuredAt: string,
  timeZone: string,
): RecordedCalibration | null {
  return calibrationOn(calibrationsOf(instrument), dayAtSite(measuredAt, timeZone));
}

/** A record sealed before they were kept per reading has the one of the visit's day. */
function calibrationsOf(instrument: Instrument): readonly RecordedCalibration[] {
  const { calibrations, calibratedOn, calibrationDueOn: dueOn, certificate } = instrument;
  if (calibrations !== undefined) return calibrations;
  return calibratedOn === null || dueOn === null ? [] : [{ calibratedOn, dueOn, certificate }];
}
