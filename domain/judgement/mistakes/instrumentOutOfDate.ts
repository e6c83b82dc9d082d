/** Row 22: out of date on the day of the reading, whatever the date says today. Readings stay; they are taken again. */
import { proofOf } from '../proof/proofOf.ts';
import { type MistakeRule, mistakeFinding } from './mistakeFinding.ts';

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
            inputs: { instrument: instrument.label, calibrationDueOn: instrument.calibrationDueOn ?? '' },
            blocks: ['leaving', 'registration'],
          },
          context,
        ),
      ];
    }),
};
