/** Instruments and their calibrations put right; a record sealed before keeps what it said of them. */
import { findCalibration, isInstrument } from '../../db/people.ts';
import { calibrations, instruments } from '../../db/schema/index.ts';
import { companyToday } from './companyToday.ts';
import { fail, type Handlers, notFound } from './handler.ts';
import { requireStaff } from './requireStaff.ts';

export const instrumentChangeHandlers: Handlers<
  | 'instruments.update'
  | 'instruments.retire'
  | 'instruments.putBack'
  | 'instruments.correctCalibration'
  | 'instruments.withdrawCalibration'
> = {
  'instruments.update': ({ instrumentId, instrument }, context) => {
    if (!isInstrument(context.db, instrumentId)) return notFound('instruments', instrumentId);
    const { keptById, ...fields } = instrument;
    if (keptById !== null) requireStaff(context.db, keptById);
    context.write((writer) => writer.update(instruments, instrumentId, { ...fields, keptBy: keptById }));
    context.services.changed(['instruments', 'runs']);
    return {};
  },

  'instruments.retire': ({ instrumentId, on, why }, context) => {
    if (!isInstrument(context.db, instrumentId)) return notFound('instruments', instrumentId);
    if (on > companyToday(context)) return fail('day-in-future', {});
    context.write((writer) => writer.update(instruments, instrumentId, { retiredOn: on, endReason: why }));
    context.services.changed(['instruments', 'people']);
    return {};
  },

  'instruments.putBack': ({ instrumentId }, context) => {
    if (!isInstrument(context.db, instrumentId)) return notFound('instruments', instrumentId);
    context.write((writer) => writer.update(instruments, instrumentId, { retiredOn: null, endReason: null }));
    context.services.changed(['instruments', 'people']);
    return {};
  },

  'instruments.correctCalibration': ({ calibrationId, ...fields }, context) => {
    const { calibratedOn, dueOn } = fields;
    if (findCalibration(context.db, calibrationId) === undefined) return notFound('calibrations', calibrationId);
    if (calibratedOn > companyToday(context)) return fail('day-in-future', {});
    if (dueOn < calibratedOn) return fail('dates-reversed', { calibratedOn, dueOn });
    context.write((writer) => writer.update(calibrations, calibrationId, fields));
    context.services.changed(['instruments', 'runs']);
    return {};
  },

  'instruments.withdrawCalibration': ({ calibrationId, why }, context) => {
    if (findCalibration(context.db, calibrationId) === undefined) return notFound('calibrations', calibrationId);
    context.write((writer) => writer.update(calibrations, calibrationId, { withdrawnAt: context.now, endReason: why }));
    context.services.changed(['instruments', 'runs']);
    return {};
  },
};
