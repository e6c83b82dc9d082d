/** An appliance moved, taken out of use, replaced. Only where it stands changes: dates, readings and records are its own. */
import { findAppliance, listAppliancesOfSite } from '../../db/appliances.ts';
import type { ReadableDb } from '../../db/openStore.ts';
import {
  findLastPlacement,
  findPlacement,
  findSuccessor,
  listDaysAhead,
  listPlacements,
  type PlacementRow,
} from '../../db/placements.ts';
import { appliances, placements } from '../../db/schema/index.ts';
import { findSite } from '../../db/sites.ts';
import type { StoreWriter } from '../../db/storeWriter.ts';
import { fail, type HandlerContext, type Handlers, notFound } from './handler.ts';
import { siteToday } from './siteToday.ts';

const TOPICS = ['appliances', 'sites', 'customers', 'registrations', 'jobs'] as const;

export const placementHandlers: Handlers<
  'appliances.getPlaces' | 'appliances.takeOut' | 'appliances.putBack' | 'appliances.move'
> = {
  'appliances.getPlaces': ({ applianceId }, context) => {
    const { db } = context;
    const appliance = findAppliance(db, applianceId) ?? notFound('appliances', applianceId);
    const places = listPlacements(db, applianceId);
    const before = appliance.supersedesId === null ? undefined : findAppliance(db, appliance.supersedesId);
    const after = findSuccessor(db, applianceId);
    const siteId = places[0]?.placement.siteId;
    return {
      places: places.map(({ placement, street, city }) => ({
        placementId: placement.id,
        siteId: placement.siteId,
        street,
        city,
        position: placement.position,
        fromOn: placement.fromOn,
        toOn: placement.toOn,
        endReason: placement.endReason,
      })),
      replaces: before === undefined ? null : nameOf(before),
      replacedBy: after === undefined ? null : nameOf(after),
      neighbours:
        siteId === undefined
          ? []
          : listAppliancesOfSite(db, siteId)
              .filter((row) => row.applianceId !== applianceId)
              .map(({ applianceId: otherId, serial, maker, model }) => ({
                applianceId: otherId,
                serial,
                maker,
                model,
              })),
    };
  },

  'appliances.takeOut': ({ applianceId, on, why, replacedById }, context) => {
    if (findAppliance(context.db, applianceId) === undefined) return notFound('appliances', applianceId);
    const placement = findPlacement(context.db, applianceId) ?? fail('not-standing', {});
    if (replacedById === applianceId) return fail('replaced-by-itself', {});
    if (replacedById !== null && findAppliance(context.db, replacedById) === undefined)
      return notFound('appliances', replacedById);
    requireUntilToday(context, placement, on);
    requireNothingAhead(context.db, applianceId);
    context.write((writer) => {
      endPlacement(writer, placement, on, why);
      if (replacedById !== null) writer.update(appliances, replacedById, { supersedesId: applianceId });
    });
    context.services.changed([...TOPICS]);
    return {};
  },

  'appliances.putBack': ({ applianceId }, context) => {
    if (findAppliance(context.db, applianceId) === undefined) return notFound('appliances', applianceId);
    const last = findLastPlacement(context.db, applianceId);
    if (last === undefined || last.toOn === null) return fail('is-standing', {});
    context.write((writer) => {
      writer.update(placements, last.id, { toOn: null, endReason: null });
      const successor = findSuccessor(writer.db, applianceId);
      if (successor !== undefined) writer.update(appliances, successor.id, { supersedesId: null });
    });
    context.services.changed([...TOPICS]);
    return {};
  },

  'appliances.move': ({ applianceId, siteId, position, on, why }, context) => {
    if (findAppliance(context.db, applianceId) === undefined) return notFound('appliances', applianceId);
    if (findSite(context.db, siteId) === undefined) return notFound('sites', siteId);
    const placement = findPlacement(context.db, applianceId);
    if (placement?.siteId === siteId) return fail('same-site', {});
    const from = placement ?? findLastPlacement(context.db, applianceId);
    if (from !== undefined) requireUntilToday(context, from, on);
    requireNothingAhead(context.db, applianceId);
    context.write((writer) => {
      if (placement !== undefined) endPlacement(writer, placement, on, why);
      writer.insert(placements, { applianceId, siteId, position, fromOn: on });
    });
    context.services.changed([...TOPICS]);
    return {};
  },
};

/** When an appliance is filed, the day it is filed on stands for the unknown day it came: an earlier end shows that day wrong. */
function endPlacement(writer: StoreWriter, { id, fromOn }: PlacementRow, on: string, why: string): void {
  writer.update(placements, id, {
    toOn: on,
    endReason: why,
    ...(fromOn !== null && fromOn > on ? { fromOn: null } : {}),
  });
}

function requireUntilToday(context: HandlerContext, { siteId }: PlacementRow, on: string): void {
  if (on > siteToday(context, siteId)) fail('day-in-future', {});
}

function requireNothingAhead(db: ReadableDb, applianceId: string): void {
  const days = listDaysAhead(db, applianceId);
  if (days.length > 0) fail('visits-ahead', { days: [...days] });
}

function nameOf({ id, serial, maker, model }: typeof appliances.$inferSelect) {
  return { applianceId: id, serial, maker, model };
}
