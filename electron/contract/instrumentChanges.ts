/** An instrument's particulars and calibrations put right, and taking it out of use. */
import { z } from 'zod';
import { day, id, line, nothing, operation, optionalLine } from './operation.ts';
import { instrument } from './people.ts';

const office = ['owner', 'dispatcher'] as const;

export const instrumentChangeOperations = {
  'instruments.update': operation({
    access: office,
    input: z.strictObject({
      instrumentId: id,
      instrument: instrument.pick({
        kind: true,
        label: true,
        serial: true,
        accuracy: true,
        rangeMax: true,
        keptById: true,
      }),
    }),
    output: nothing,
  }),
  /** Broken, lost, sold: nothing is measured with it after this day. */
  'instruments.retire': operation({
    access: office,
    input: z.strictObject({ instrumentId: id, on: day, why: line }),
    output: nothing,
    errors: { 'day-in-future': nothing },
  }),
  'instruments.putBack': operation({ access: office, input: z.strictObject({ instrumentId: id }), output: nothing }),
  'instruments.correctCalibration': operation({
    access: office,
    input: z.strictObject({ calibrationId: id, calibratedOn: day, dueOn: day, certificate: optionalLine }),
    output: nothing,
    errors: { 'dates-reversed': z.strictObject({ calibratedOn: day, dueOn: day }), 'day-in-future': nothing },
  }),
  /** It never was; the one before it counts again. */
  'instruments.withdrawCalibration': operation({
    access: office,
    input: z.strictObject({ calibrationId: id, why: line }),
    output: nothing,
  }),
} as const;
