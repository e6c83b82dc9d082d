/** People with licences and training, and instruments with calibrations. */
import { findAttachment, listLinkedFiles } from '../../db/attachments.ts';
import {
  findMapping,
  isInstrument,
  type LicenceRow,
  listInstruments,
  listLicences,
  listRoleRows,
  listStaff,
  listTrainings,
  listWithdrawnLicences,
  listWithdrawnTrainings,
  type TrainingRow,
} from '../../db/people.ts';
import {
  attachmentLinks,
  calibrations,
  instrumentMappings,
  instruments,
  licences,
  staff,
  trainings,
} from '../../db/schema/index.ts';
import type { StoreWriter } from '../../db/storeWriter.ts';
import { calibrationOn } from '../../domain/judgement/proof/calibrationOn.ts';
import type { StaffRole } from '../../domain/vocabulary/people.ts';
import type { Instrument, Licence, StaffMember, Training } from '../contract/people.ts';
import { setRoles } from './appHandlers.ts';
import { companyToday } from './companyToday.ts';
import { actorOf, fail, type HandlerContext, type Handlers, notFound } from './handler.ts';
import { hashPin } from './pins.ts';
import { requireStaff } from './requireStaff.ts';

export const peopleHandlers: Handlers<
  | 'staff.list'
  | 'staff.create'
  | 'staff.update'
  | 'staff.setPin'
  | 'staff.addLicence'
  | 'staff.addTraining'
  | 'instruments.list'
  | 'instruments.create'
  | 'instruments.addCalibration'
  | 'instruments.getMapping'
  | 'instruments.keepMapping'
> = {
  'staff.list': (_input, context) => {
    const licencesOf = Map.groupBy(listLicences(context.db), (row) => row.staffId);
    const trainingsOf = Map.groupBy(listTrainings(context.db), (row) => row.staffId);
    const withdrawnLicences = Map.groupBy(listWithdrawnLicences(context.db), (row) => row.staffId);
    const withdrawnTrainings = Map.groupBy(listWithdrawnTrainings(context.db), (row) => row.staffId);
    return listStaff(context.db).map(
      (row): StaffMember => ({
        staffId: row.id,
        name: row.name,
        initials: row.initials,
        phone: row.phone,
        email: row.email,
        roles: row.roles as StaffRole[],
        activeFrom: row.activeFrom,
        activeTo: row.activeTo,
        licences: (licencesOf.get(row.id) ?? []).map(toLicence),
        trainings: (trainingsOf.get(row.id) ?? []).map(toTraining),
        withdrawn: {
          licences: (withdrawnLicences.get(row.id) ?? []).map(toLicence),
          trainings: (withdrawnTrainings.get(row.id) ?? []).map(toTraining),
        },
      }),
    );
  },

  'staff.create': (input, context) => {
    const { roles, pin, ...fields } = input;
    const staffId = context.write((writer) => {
      const id = writer.insert(staff, { ...fields, pinHash: hashPin(pin), activeFrom: companyToday(context) });
      setRoles(writer, id, [], roles);
      return id;
    });
    context.services.changed(['people', 'app']);
    return { staffId };
  },

  'staff.update': (input, context) => {
    const { staffId, roles, ...fields } = input;
    requireStaff(context.db, staffId);
    const staysOwner = roles.includes('owner') && fields.activeTo === null;
    const otherOwners = listStaff(context.db).filter(
      (row) => row.id !== staffId && row.activeTo === null && row.roles.includes('owner'),
    );
    if (!staysOwner && otherOwners.length === 0) return fail('last-owner', {});
    context.write((writer) => {
      writer.update(staff, staffId, fields);
      setRoles(writer, staffId, listRoleRows(writer.db, staffId), roles);
    });
    context.services.changed(['people', 'app']);
    return {};
  },

  'staff.setPin': (input, context) => {
    requireStaff(context.db, input.staffId);
    context.write((writer) => writer.update(staff, input.staffId, { pinHash: hashPin(input.pin) }));
    return {};
  },

  'staff.addLicence': (input, context) => {
    requireStaff(context.db, input.staffId);
    const { validFrom, validTo } = input.licence;
    if (validTo < validFrom) return fail('dates-reversed', { validFrom, validTo });
    const licenceId = context.write((writer) => writer.insert(licences, { staffId: input.staffId, ...input.licence }));
    context.services.changed(['people']);
    return { licenceId };
  },

  'staff.addTraining': (input, context) => {
    requireStaff(context.db, input.staffId);
    const { validFrom, validTo } = input.training;
    if (validTo !== null && validTo < validFrom) return fail('dates-reversed', { validFrom, validTo });
    const trainingId = context.write((writer) =>
      writer.insert(trainings, { staffId: input.staffId, ...input.training }),
    );
    context.services.changed(['people']);
    return { trainingId };
  },

  'instruments.list': (_input, context) => {
    const today = companyToday(context);
    return listInstruments(context.db).map((row): Instrument => {
      const calibration = calibrationOn(row.calibrations, today);
      return {
        instrumentId: row.id,
        kind: row.kind as Instrument['kind'],
        label: row.label,
        serial: row.serial,
        accuracy: row.accuracy,
        rangeMax: row.rangeMax,
        keptById: row.keptBy,
        retiredOn: row.retiredOn,
        endReason: row.endReason,
        calibrationId: calibration?.id ?? null,
        calibratedOn: calibration?.calibratedOn ?? null,
        dueOn: calibration?.dueOn ?? null,
        certificate: calibration?.certificate ?? null,
        certificateIds: calibration === null ? [] : [...listLinkedFiles(context.db, 'calibrations', calibration.id)],
        isInDate: calibration !== null && calibration.dueOn >= today,
      };
    });
  },

  'instruments.create': (input, context) => {
    const { keptById, paperIds, ...fields } = input;
    if (keptById !== null) requireStaff(context.db, keptById);
    requirePapers(context, paperIds);
    const instrumentId = context.write((writer) => {
      const entityId = writer.insert(instruments, { ...fields, keptBy: keptById });
      linkPapers(writer, 'instruments', entityId, paperIds);
      return entityId;
    });
    context.services.changed(['instruments']);
    return { instrumentId };
  },

  'instruments.getMapping': (input, context) => {
    if (!isInstrument(context.db, input.instrumentId)) return notFound('instruments', input.instrumentId);
    return { mapping: findMapping(context.db, input.instrumentId)?.mapping ?? null };
  },

  'instruments.keepMapping': (input, context) => {
    if (!isInstrument(context.db, input.instrumentId)) return notFound('instruments', input.instrumentId);
    context.write((writer) => {
      const kept = findMapping(writer.db, input.instrumentId);
      if (kept === undefined) writer.insert(instrumentMappings, input);
      else writer.update(instrumentMappings, kept.id, { mapping: input.mapping });
    });
    context.services.changed(['instruments']);
    return {};
  },

  'instruments.addCalibration': (input, context) => {
    const { paperIds, ...fields } = input;
    const { calibratedOn, dueOn } = fields;
    if (calibratedOn > companyToday(context)) return fail('day-in-future', {});
    if (dueOn < calibratedOn) return fail('dates-reversed', { calibratedOn, dueOn });
    if (!isInstrument(context.db, input.instrumentId)) return notFound('instruments', input.instrumentId);
    requirePapers(context, paperIds);
    context.write((writer) => linkPapers(writer, 'calibrations', writer.insert(calibrations, fields), paperIds));
    context.services.changed(['instruments']);
    return {};
  },
};

function toLicence({ id, staffId: _staffId, withdrawnAt: _withdrawnAt, fuel, ...rest }: LicenceRow): Licence {
  return { licenceId: id, fuel: fuel as Licence['fuel'], ...rest };
}

function toTraining({ id, staffId: _staffId, withdrawnAt: _withdrawnAt, ...rest }: TrainingRow): Training {
  return { trainingId: id, ...rest };
}

/** Whoever reads with an instrument does not put it in date on their word alone; the office answers for its list. */
function requirePapers(context: HandlerContext, paperIds: readonly string[]): void {
  for (const attachmentId of paperIds) {
    if (findAttachment(context.db, attachmentId) === undefined) notFound('attachments', attachmentId);
  }
  const isOffice = actorOf(context).roles.some((role) => role === 'owner' || role === 'dispatcher');
  if (!isOffice && paperIds.length === 0) fail('papers-missing', {});
}

function linkPapers(
  writer: StoreWriter,
  entity: 'instruments' | 'calibrations',
  entityId: string,
  paperIds: readonly string[],
): void {
  for (const attachmentId of new Set(paperIds)) writer.insert(attachmentLinks, { attachmentId, entity, entityId });
}
