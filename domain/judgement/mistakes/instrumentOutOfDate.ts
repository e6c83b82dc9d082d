/** Out of date on the day of the reading, whatever the date says today. Readings stay; they are taken again. */
import type { RecordedInstrument } from '../../procedure/runRecord.ts';
import type { Measured } from '../measured.ts';
import { calibrationOn } from '../proof/calibrationOn.ts';
import { proofOf } from '../proof/proofOf.ts';
import { dayOfReading } from '../proof/siteDay.ts';
import type { RunContext } from '../runContext.ts';
import { type MistakeRule, mistakeFinding, newest } from './mistakeFinding.ts';

export const instrumentOutOfDate: MistakeRule = {
  row: 22,
  find: (context) =>
    context.record.instruments.flatMap((instrument) => {
      const about = context.measured.filter((one) => {
        if (one.reading.instrumentId !== instrument.instrumentId) return false;
        const proof = proofOf([one], context);
        return !proof.proven && proof.because.includes('instrument-out-of-date');
      });
      if (about.length === 0) return [];
      return [
        mistakeFinding(
          {
            code: 'instrument-out-of-date',
            about,
            from: 'practice',
            rule: 'due date of the calibration against the day of the reading',
            ask: 'the readings again with an instrument that is in date',
            inputs: { instrument: instrument.label, calibrationDueOn: dueOnOf(about, instrument, context) },
            blocks: ['leaving', 'registration'],
          },
          context,
        ),
      ];
    }),
};

/** The last day of the calibration that the newest of these readings was taken with. */
function dueOnOf(about: readonly Measured[], { calibrations }: RecordedInstrument, context: RunContext): string {
  const atMs = newest(about)?.atMs ?? null;
  if (atMs === null) return '';
  return calibrationOn(calibrations, dayOfReading(atMs, context))?.dueOn ?? '';
}
