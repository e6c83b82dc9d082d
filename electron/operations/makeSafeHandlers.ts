/** Make-safes: opened at one key, described afterwards, closed only by a licensed person with a reason. */
import { findMakeSafe, listMakeSafePhotos, listOpenMakeSafes } from '../../db/appliances.ts';
import { findAttachment } from '../../db/attachments.ts';
import type { ReadableDb } from '../../db/openStore.ts';
import { findPlacement } from '../../db/placements.ts';
import { attachmentLinks, makeSafes } from '../../db/schema/index.ts';
import { findVisit } from '../../db/visits.ts';
import { isTellingReason } from '../../domain/judgement/closingReason.ts';
import { actorOf, fail, type Handlers, notFound } from './handler.ts';
import { gasWorkOn, requireLicence } from './licensing.ts';
import { siteToday } from './siteToday.ts';

export const makeSafeHandlers: Handlers<
  'makeSafes.list' | 'makeSafes.open' | 'makeSafes.describe' | 'makeSafes.attachPhoto' | 'makeSafes.close'
> = {
  'makeSafes.list': (_input, context) =>
    listOpenMakeSafes(context.db).map(({ makeSafe, ...where }) => ({
      makeSafeId: makeSafe.id,
      applianceId: makeSafe.applianceId,
      siteId: makeSafe.siteId,
      ...where,
      what: makeSafe.what,
      isolatedHow: makeSafe.isolatedHow,
      labelNumber: makeSafe.labelNumber,
      toldWhom: makeSafe.toldWhom,
      isRefused: makeSafe.isRefused,
      openedAt: makeSafe.openedAt,
    })),

  'makeSafes.open': (input, context) => {
    const placement = findPlacement(context.db, input.applianceId) ?? notFound('appliances', input.applianceId);
    // An emergency is written down whatever else is wrong: a visit nobody knows any more is left out.
    const visitId = input.visitId !== null && findVisit(context.db, input.visitId) !== undefined ? input.visitId : null;
    const makeSafeId = context.write((writer) =>
      writer.insert(makeSafes, {
        ...input,
        visitId,
        siteId: placement.siteId,
        isRefused: false,
        openedById: actorOf(context).staffId,
        openedAt: context.now,
      }),
    );
    context.services.changed(['runs', 'appliances', 'sites', 'customers', 'visits']);
    return { makeSafeId };
  },

  'makeSafes.describe': (input, context) => {
    const { makeSafeId, ...fields } = input;
    requireOpen(context.db, makeSafeId);
    context.write((writer) => writer.update(makeSafes, makeSafeId, fields));
    context.services.changed(['runs', 'appliances']);
    return {};
  },

  'makeSafes.attachPhoto': ({ makeSafeId, attachmentId }, context) => {
    if (findMakeSafe(context.db, makeSafeId) === undefined) return notFound('make_safes', makeSafeId);
    if (findAttachment(context.db, attachmentId) === undefined) return notFound('attachments', attachmentId);
    if (!listMakeSafePhotos(context.db, makeSafeId).includes(attachmentId)) {
      context.write((writer) =>
        writer.insert(attachmentLinks, { attachmentId, entity: 'make_safes', entityId: makeSafeId }),
      );
      context.services.changed(['runs', 'appliances']);
    }
    return {};
  },

  'makeSafes.close': (input, context) => {
    const makeSafe = requireOpen(context.db, input.makeSafeId);
    const actor = actorOf(context);
    const gasWork = gasWorkOn(context.db, makeSafe.applianceId, siteToday(context, makeSafe.siteId));
    requireLicence(context.db, actor.staffId, gasWork);
    if (!isTellingReason(input.reason)) return fail('reason-says-nothing', {});
    context.write((writer) =>
      writer.update(makeSafes, makeSafe.id, {
        closedById: actor.staffId,
        closedAt: context.now,
        closedReason: input.reason,
      }),
    );
    context.services.changed(['runs', 'appliances', 'sites', 'customers', 'visits']);
    return {};
  },
};

function requireOpen(db: ReadableDb, makeSafeId: string): typeof makeSafes.$inferSelect {
  const row = findMakeSafe(db, makeSafeId) ?? notFound('make_safes', makeSafeId);
  return row.closedAt === null ? row : fail('make-safe-closed', {});
}
