/** Who is who at a site, since when and until when, and how to reach them. */
import { findParty, findRole, type PartyRoleRow } from '../../db/customers.ts';
import type { ReadableDb } from '../../db/openStore.ts';
import { findCompany } from '../../db/people.ts';
import { parties, partyRoles } from '../../db/schema/index.ts';
import { findSite } from '../../db/sites.ts';
import { fail, type Handlers, notFound } from './handler.ts';
import { toPartyRow } from './partyFields.ts';
import { siteToday } from './siteToday.ts';

export const sitePeopleHandlers: Handlers<
  'sites.addRole' | 'sites.updateRole' | 'sites.removeRole' | 'parties.update'
> = {
  'sites.addRole': (input, context) => {
    if (findSite(context.db, input.siteId) === undefined) return notFound('sites', input.siteId);
    const { party } = input;
    if ('partyId' in party && findParty(context.db, party.partyId) === undefined)
      return notFound('parties', party.partyId);
    const partyId = context.write((writer) => {
      const id =
        'partyId' in party
          ? party.partyId
          : writer.insert(parties, toPartyRow(party, findCompany(writer.db)?.country ?? ''));
      writer.insert(partyRoles, { partyId: id, role: input.role, siteId: input.siteId, fromOn: input.fromOn });
      return id;
    });
    context.services.changed(['sites', 'registrations']);
    return { partyId };
  },

  'sites.updateRole': ({ roleId, role, fromOn, toOn }, context) => {
    const row = requireRole(context.db, roleId);
    if (fromOn !== null && toOn !== null && toOn < fromOn)
      return fail('dates-reversed', { validFrom: fromOn, validTo: toOn });
    // Who is here is whoever has no last day: one still to come would take them off today.
    if (toOn !== null && toOn > siteToday(context, row.siteId)) return fail('day-in-future', {});
    context.write((writer) => writer.update(partyRoles, roleId, { role, fromOn, toOn }));
    context.services.changed(['sites', 'registrations']);
    return {};
  },

  'sites.removeRole': ({ roleId }, context) => {
    requireRole(context.db, roleId);
    context.write((writer) => writer.remove(partyRoles, roleId));
    context.services.changed(['sites', 'registrations']);
    return {};
  },

  'parties.update': ({ partyId, party }, context) => {
    const row = findParty(context.db, partyId) ?? notFound('parties', partyId);
    if (row.erasedAt !== null) return fail('person-erased', {});
    context.write((writer) =>
      writer.update(parties, partyId, toPartyRow(party, findCompany(writer.db)?.country ?? '')),
    );
    context.services.changed(['sites', 'customers', 'registrations']);
    return {};
  },
};

function requireRole(db: ReadableDb, roleId: string): PartyRoleRow {
  return findRole(db, roleId) ?? notFound('party_roles', roleId);
}
