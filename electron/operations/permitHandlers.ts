/** Permits of a site, from applied for to closed: one row each, put right as it goes on. */
import type { ReadableDb } from '../../db/openStore.ts';
import { findPermit, type PermitRow } from '../../db/registrations.ts';
import { permits } from '../../db/schema/index.ts';
import { findSite } from '../../db/sites.ts';
import { type Handlers, notFound } from './handler.ts';

export const permitHandlers: Handlers<
  'sites.addPermit' | 'sites.updatePermit' | 'sites.withdrawPermit' | 'sites.putBackPermit'
> = {
  'sites.addPermit': ({ siteId, permit }, context) => {
    if (findSite(context.db, siteId) === undefined) return notFound('sites', siteId);
    context.write((writer) => writer.insert(permits, { siteId, ...permit }));
    context.services.changed(['sites', 'registrations']);
    return {};
  },

  'sites.updatePermit': ({ permitId, permit }, context) => {
    requirePermit(context.db, permitId);
    context.write((writer) => writer.update(permits, permitId, permit));
    context.services.changed(['sites', 'registrations']);
    return {};
  },

  'sites.withdrawPermit': ({ permitId, why }, context) => {
    requirePermit(context.db, permitId);
    context.write((writer) => writer.update(permits, permitId, { withdrawnAt: context.now, endReason: why }));
    context.services.changed(['sites', 'registrations']);
    return {};
  },

  'sites.putBackPermit': ({ permitId }, context) => {
    requirePermit(context.db, permitId);
    context.write((writer) => writer.update(permits, permitId, { withdrawnAt: null, endReason: null }));
    context.services.changed(['sites', 'registrations']);
    return {};
  },
};

function requirePermit(db: ReadableDb, permitId: string): PermitRow {
  return findPermit(db, permitId) ?? notFound('permits', permitId);
}
