/** Appliances: identity, dates kept apart, fuel states, history. */
import {
  type ApplianceRow,
  findAppliance,
  findApplianceSummary,
  listApplianceDates,
  listAppliances,
  listBySerialKey,
  listFuelStatePhotos,
  listFuelStates,
  listMakeSafePhotos,
  listMakeSafes,
  listVisitsOfAppliance,
} from '../../db/appliances.ts';
import { findAttachment } from '../../db/attachments.ts';
import { listOpenNotices, withOpenNotices } from '../../db/openNotices.ts';
import type { ReadableDb } from '../../db/openStore.ts';
import { findPlacement } from '../../db/placements.ts';
import { applianceDates, appliances, attachmentLinks, fuelStates, placements } from '../../db/schema/index.ts';
import { findNewestRevision } from '../../db/sheets.ts';
import { findSite } from '../../db/sites.ts';
import type { KnownDate } from '../../domain/coverage/knownDate.ts';
import { dateOrderProblems } from '../../domain/judgement/mistakes/dateOrderProblems.ts';
import { serialElsewhere } from '../../domain/judgement/mistakes/serialElsewhere.ts';
import type { FuelKey } from '../../domain/procedure/modelSheet.ts';
import { serialKeyOf } from '../../domain/text/serialKey.ts';
import type { ApplianceFields } from '../contract/appliances.ts';
import { companyToday } from './companyToday.ts';
import { actorOf, fail, type Handlers, notFound } from './handler.ts';
import { requireLicence } from './licensing.ts';
import { siteToday } from './siteToday.ts';

export const applianceHandlers: Handlers<
  | 'appliances.list'
  | 'appliances.get'
  | 'appliances.create'
  | 'appliances.update'
  | 'appliances.setDate'
  | 'appliances.recordFuelState'
> = {
  'appliances.list': (input, context) => {
    const rows = listAppliances(context.store, input);
    return {
      rows: withOpenNotices(context.db, rows),
      next: rows.length === input.limit ? (rows.at(-1)?.applianceId ?? null) : null,
    };
  },

  'appliances.get': (input, context) => {
    const row = findAppliance(context.db, input.applianceId);
    const summary = findApplianceSummary(context.db, input.applianceId);
    if (row === undefined || summary === undefined) return notFound('appliances', input.applianceId);
    return {
      applianceId: row.id,
      appliance: toApplianceFields(row),
      dates: listApplianceDates(context.db, row.id).map(({ kind, on, precision, source }) => ({
        kind: kind as never,
        on,
        precision: precision as never,
        source,
      })),
      siteId: summary.siteId,
      customerId: summary.customerId,
      fuelStates: listFuelStates(context.db, row.id).map(({ id, fuel, fromOn, conversionKit, orifice, proof }) => ({
        fuel: fuel as FuelKey,
        fromOn,
        conversionKit,
        orifice,
        proof,
        photoIds: [...listFuelStatePhotos(context.db, id)],
      })),
      visits: listVisitsOfAppliance(context.db, row.id).map(({ sealedAt, kind, ...visit }) => ({
        ...visit,
        kind: kind as never,
        isSealed: sealedAt !== null,
      })),
      notices: [...listOpenNotices(context.db, row.id)],
      makeSafes: listMakeSafes(context.db, row.id).map(({ makeSafe, openedByName, closedByName }) => ({
        makeSafeId: makeSafe.id,
        what: makeSafe.what,
        isolatedHow: makeSafe.isolatedHow,
        labelNumber: makeSafe.labelNumber,
        toldWhom: makeSafe.toldWhom,
        deliveredHow: makeSafe.deliveredHow,
        isRefused: makeSafe.isRefused,
        openedAt: makeSafe.openedAt,
        openedByName,
        closedAt: makeSafe.closedAt,
        closedByName,
        closedReason: makeSafe.closedReason,
        photoIds: [...listMakeSafePhotos(context.db, makeSafe.id)],
      })),
    };
  },

  'appliances.create': (input, context) => {
    if (findSite(context.db, input.siteId) === undefined) return notFound('sites', input.siteId);
    requireFreeSerial(context.db, input.appliance, { applianceId: null, siteId: input.siteId });
    requireSheet(context.db, input.appliance.sheetId);
    requireDateOrder(input.dates, siteToday(context, input.siteId));
    const applianceId = context.write((writer) => {
      const id = writer.insert(appliances, { ...input.appliance, serialKey: serialKeyOf(input.appliance.serial) });
      for (const date of input.dates) writer.insert(applianceDates, { applianceId: id, ...date });
      const fromOn = companyToday(context);
      writer.insert(placements, { applianceId: id, siteId: input.siteId, position: input.position, fromOn });
      return id;
    });
    context.services.changed(['appliances', 'sites', 'customers', 'registrations']);
    return { applianceId };
  },

  'appliances.update': (input, context) => {
    if (findAppliance(context.db, input.applianceId) === undefined) return notFound('appliances', input.applianceId);
    requireFreeSerial(context.db, input.appliance, {
      applianceId: input.applianceId,
      siteId: findPlacement(context.db, input.applianceId)?.siteId,
    });
    requireSheet(context.db, input.appliance.sheetId);
    context.write((writer) =>
      writer.update(appliances, input.applianceId, {
        ...input.appliance,
        serialKey: serialKeyOf(input.appliance.serial),
      }),
    );
    context.services.changed(['appliances', 'runs', 'registrations']);
    return {};
  },

  'appliances.setDate': (input, context) => {
    if (findAppliance(context.db, input.applianceId) === undefined) return notFound('appliances', input.applianceId);
    const known = listApplianceDates(context.db, input.applianceId);
    requireDateOrder(
      [...(known.filter((date) => date.kind !== input.date.kind) as KnownDate[]), input.date],
      siteToday(context, findPlacement(context.db, input.applianceId)?.siteId ?? null),
    );
    context.write((writer) => {
      const existing = known.find((date) => date.kind === input.date.kind);
      if (existing === undefined) writer.insert(applianceDates, { applianceId: input.applianceId, ...input.date });
      else writer.update(applianceDates, existing.id, input.date);
    });
    context.services.changed(['appliances', 'registrations']);
    return {};
  },

  'appliances.recordFuelState': (input, context) => {
    const { photoIds, ...state } = input;
    const placement = findPlacement(context.db, input.applianceId) ?? notFound('appliances', input.applianceId);
    const today = siteToday(context, placement.siteId);
    if (input.fromOn > today) return fail('day-in-future', {});
    requireLicence(context.db, actorOf(context).staffId, {
      on: today,
      fuel: input.fuel,
      ratedInputKw: findAppliance(context.db, input.applianceId)?.ratedInputKw ?? null,
    });
    for (const attachmentId of photoIds) {
      const photo = findAttachment(context.db, attachmentId) ?? notFound('attachments', attachmentId);
      if (!photo.mediaType.startsWith('image/')) return fail('no-photo', {});
    }
    context.write((writer) => {
      const entityId = writer.insert(fuelStates, state);
      for (const attachmentId of new Set(photoIds))
        writer.insert(attachmentLinks, { attachmentId, entity: 'fuel_states', entityId });
    });
    context.services.changed(['appliances', 'runs']);
    return {};
  },
};

/** `siteId`: where it stands, or is to stand. */
function requireFreeSerial(
  db: ReadableDb,
  { maker, serial }: ApplianceFields,
  own: { readonly applianceId: string | null; readonly siteId: string | undefined },
): void {
  const alike = listBySerialKey(db, serialKeyOf(serial));
  const known = alike.map((row) => ({ ...row, siteId: row.siteId ?? '' }));
  const one = { applianceId: own.applianceId ?? '', siteId: own.siteId ?? '', maker, serial };
  const [problem] = serialElsewhere(one, known);
  const taken = alike.find(({ applianceId }) => applianceId === problem?.otherApplianceId);
  if (problem === undefined || taken === undefined) return;
  const where = [taken.customerName, taken.street, taken.city].filter(Boolean).join(', ');
  const { code: how, otherSerial, isOnSameSite } = problem;
  fail('serial-taken', {
    applianceId: taken.applianceId,
    where: where === '' ? null : where,
    how,
    otherSerial,
    isOnSameSite,
  });
}

function requireSheet(db: ReadableDb, sheetId: string | null): void {
  if (sheetId !== null && findNewestRevision(db, sheetId) === undefined) fail('unknown-sheet', { sheetId });
}

/** What can't have been is refused; what is only unusual is asked about where it is typed. */
function requireDateOrder(dates: readonly KnownDate[], today: string): void {
  const problem = dateOrderProblems(dates, today).find(({ isImpossible }) => isImpossible);
  if (problem === undefined) return;
  const { earlier, later } = problem;
  if (later === 'today') fail('day-in-future', {});
  if (earlier !== 'registered' && later !== 'registered') fail('dates-out-of-order', { earlier, later });
}

export function toApplianceFields(row: ApplianceRow): ApplianceFields {
  const {
    id: _id,
    serialKey: _serialKey,
    supersedesId: _supersedesId,
    plateFuel,
    tagFuel,
    ratedInputBasis,
    ...rest
  } = row;
  return {
    ...rest,
    plateFuel: plateFuel as ApplianceFields['plateFuel'],
    tagFuel: tagFuel as ApplianceFields['tagFuel'],
    ratedInputBasis: ratedInputBasis as ApplianceFields['ratedInputBasis'],
  };
}
