/** A house changes hands, and goes back when that was a mistake. */
import { listOpenRolesAtSite } from '../../../db/applianceHistory.ts';
import { findCustomer } from '../../../db/customers.ts';
import { findCompany } from '../../../db/people.ts';
import { customers, parties, partyRoles, sites, siteTransfers } from '../../../db/schema/index.ts';
import { findSite } from '../../../db/sites.ts';
import { findLastTransfer, listTransferConsequences } from '../../../db/siteTransfers.ts';
import type { StoreWriter } from '../../../db/storeWriter.ts';
import type { PartyFields } from '../../contract/parties.ts';
import { actorOf, fail, type Handlers, notFound } from '../handler.ts';
import { toPartyRow } from '../partyFields.ts';
import { dayIn } from '../today.ts';

export const transferHandlers: Handlers<'sites.transfer' | 'sites.lastTransfer' | 'sites.takeBackTransfer'> = {
  'sites.transfer': (input, context) => {
    const site = findSite(context.db, input.siteId);
    if (site === undefined) return notFound('sites', input.siteId);
    if (input.on > dayIn(site.timeZone, context.now)) return fail('day-in-future', {});
    const before = findCustomer(context.db, site.customerId);
    if (before === undefined) throw new Error(`site ${site.id} has no customer`);
    const { to } = input;
    if ('customerId' in to && to.customerId === site.customerId) return fail('same-owner', {});
    if ('customerId' in to && findCustomer(context.db, to.customerId) === undefined) {
      return notFound('customers', to.customerId);
    }
    const byId = actorOf(context).staffId;
    const customerId = context.write((writer) => {
      const roles = endRoles(writer, site.id, before.party.id, input.on);
      const next = 'customerId' in to ? to.customerId : fileCustomer(writer, to, input.on);
      const partyId = findCustomer(writer.db, next)?.party.id ?? notFound('customers', next);
      roles.added.push(writer.insert(partyRoles, { partyId, role: 'owner', siteId: site.id, fromOn: input.on }));
      writer.update(sites, site.id, { customerId: next });
      writer.insert(siteTransfers, {
        siteId: site.id,
        changedOn: input.on,
        fromCustomerId: site.customerId,
        toCustomerId: next,
        roles,
        byId,
        at: context.now,
      });
      return next;
    });
    context.services.changed(CHANGED);
    return { customerId };
  },

  'sites.lastTransfer': (input, context) => {
    const last = findLastTransfer(context.db, input.siteId);
    if (last === undefined) return null;
    const { transfer, fromName, toName, byName } = last;
    return {
      transferId: transfer.id,
      changedOn: transfer.changedOn,
      fromName,
      toName,
      byName,
      at: transfer.at,
      restsOnIt: [...listTransferConsequences(context.store.raw, transfer)],
    };
  },

  'sites.takeBackTransfer': (input, context) => {
    const site = findSite(context.db, input.siteId) ?? notFound('sites', input.siteId);
    const last = findLastTransfer(context.db, site.id)?.transfer;
    // Somebody else put it back, or handed it on, meanwhile.
    if (last?.id !== input.transferId) return fail('not-the-last-transfer', {});
    const before = findCustomer(context.db, last.fromCustomerId) ?? notFound('customers', last.fromCustomerId);
    if (before.party.erasedAt !== null) return fail('person-erased', {});
    const what = listTransferConsequences(context.store.raw, last);
    if (what.length > 0) return fail('transfer-rested-on', { what: [...what] });
    const takenBackById = actorOf(context).staffId;
    context.write((writer) => {
      for (const roleId of last.roles.added) writer.remove(partyRoles, roleId);
      for (const roleId of last.roles.ended) writer.update(partyRoles, roleId, { toOn: null });
      writer.update(sites, site.id, { customerId: last.fromCustomerId });
      writer.update(siteTransfers, last.id, { takenBackAt: context.now, takenBackById, takenBackWhy: input.why });
    });
    context.services.changed(CHANGED);
    return { customerId: last.fromCustomerId };
  },
};

const CHANGED = ['customers', 'sites', 'appliances', 'registrations'] as const;

/** Everybody's ownership ends, and whatever else the former owner was here; an owner never written down as one is, for the history. */
function endRoles(
  writer: StoreWriter,
  siteId: string,
  formerPartyId: string,
  on: string,
): { readonly ended: string[]; readonly added: string[] } {
  const open = listOpenRolesAtSite(writer.db, siteId);
  const ending = open.filter((role) => role.role === 'owner' || role.partyId === formerPartyId);
  for (const role of ending) writer.update(partyRoles, role.id, { toOn: on });
  const added = open.some((role) => role.role === 'owner')
    ? []
    : [writer.insert(partyRoles, { partyId: formerPartyId, role: 'owner', siteId, fromOn: null, toOn: on })];
  return { ended: ending.map(({ id }) => id), added };
}

function fileCustomer(writer: StoreWriter, party: PartyFields, since: string): string {
  const partyId = writer.insert(parties, toPartyRow(party, findCompany(writer.db)?.country ?? ''));
  return writer.insert(customers, { partyId, since, note: null });
}
