/** Licences and trainings put right, ended and withdrawn: what they were before stays in the change log and in sealed records. */
import { findLicence, findTraining } from '../../db/people.ts';
import { licences, trainings } from '../../db/schema/index.ts';
import { fail, type Handlers, notFound } from './handler.ts';

export const credentialHandlers: Handlers<
  | 'staff.correctLicence'
  | 'staff.endLicence'
  | 'staff.withdrawLicence'
  | 'staff.putBackLicence'
  | 'staff.correctTraining'
  | 'staff.endTraining'
  | 'staff.withdrawTraining'
  | 'staff.putBackTraining'
> = {
  'staff.correctLicence': ({ licenceId, licence }, context) => {
    if (findLicence(context.db, licenceId) === undefined) return notFound('licences', licenceId);
    requireOrder(licence);
    context.write((writer) => writer.update(licences, licenceId, licence));
    context.services.changed(['people']);
    return {};
  },

  'staff.endLicence': ({ licenceId, lastDay, why }, context) => {
    const row = findLicence(context.db, licenceId) ?? notFound('licences', licenceId);
    requireBetween(row, lastDay);
    context.write((writer) => writer.update(licences, licenceId, { validTo: lastDay, endReason: why }));
    context.services.changed(['people']);
    return {};
  },

  'staff.withdrawLicence': ({ licenceId, why }, context) => {
    if (findLicence(context.db, licenceId) === undefined) return notFound('licences', licenceId);
    context.write((writer) => writer.update(licences, licenceId, { withdrawnAt: context.now, endReason: why }));
    context.services.changed(['people']);
    return {};
  },

  'staff.putBackLicence': ({ licenceId }, context) => {
    if (findLicence(context.db, licenceId) === undefined) return notFound('licences', licenceId);
    context.write((writer) => writer.update(licences, licenceId, { withdrawnAt: null, endReason: null }));
    context.services.changed(['people']);
    return {};
  },

  'staff.correctTraining': ({ trainingId, training }, context) => {
    if (findTraining(context.db, trainingId) === undefined) return notFound('trainings', trainingId);
    requireOrder(training);
    context.write((writer) => writer.update(trainings, trainingId, training));
    context.services.changed(['people']);
    return {};
  },

  'staff.endTraining': ({ trainingId, lastDay, why }, context) => {
    const row = findTraining(context.db, trainingId) ?? notFound('trainings', trainingId);
    requireBetween(row, lastDay);
    context.write((writer) => writer.update(trainings, trainingId, { validTo: lastDay, endReason: why }));
    context.services.changed(['people']);
    return {};
  },

  'staff.withdrawTraining': ({ trainingId, why }, context) => {
    if (findTraining(context.db, trainingId) === undefined) return notFound('trainings', trainingId);
    context.write((writer) => writer.update(trainings, trainingId, { withdrawnAt: context.now, endReason: why }));
    context.services.changed(['people']);
    return {};
  },

  'staff.putBackTraining': ({ trainingId }, context) => {
    if (findTraining(context.db, trainingId) === undefined) return notFound('trainings', trainingId);
    context.write((writer) => writer.update(trainings, trainingId, { withdrawnAt: null, endReason: null }));
    context.services.changed(['people']);
    return {};
  },
};

type Span = { readonly validFrom: string; readonly validTo: string | null };

function requireOrder({ validFrom, validTo }: Span): void {
  if (validTo !== null && validTo < validFrom) fail('dates-reversed', { validFrom, validTo });
}

function requireBetween({ validFrom, validTo }: Span, lastDay: string): void {
  if (lastDay < validFrom || (validTo !== null && lastDay > validTo)) fail('day-not-between', { validFrom, validTo });
}
