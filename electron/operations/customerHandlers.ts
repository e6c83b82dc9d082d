/** Customers and the people around them. */
import { listAppliancesOfCustomer } from '../../db/appliances.ts';
import { findCustomer, findParty, listConsents, listCustomers, listSimilarCustomers } from '../../db/customers.ts';
import { withOpenNotices } from '../../db/openNotices.ts';
import { findCompany } from '../../db/people.ts';
import { consents, customers, parties } from '../../db/schema/index.ts';
import { listSitesOf } from '../../db/sites.ts';
import { foldForSearch } from '../../domain/text/foldForSearch.ts';
import type { Party } from '../contract/parties.ts';
import { companyToday } from './companyToday.ts';
import { fail, type Handlers, notFound } from './handler.ts';
import { toPartyRow } from './partyFields.ts';

export const customerHandlers: Handlers<
  'customers.list' | 'customers.get' | 'customers.create' | 'customers.update' | 'customers.recordConsent'
> = {
  'customers.list': (input, context) => {
    const rows = listCustomers(context.store, input);
    return { rows: [...rows], next: rows.length === input.limit ? (rows.at(-1)?.customerId ?? null) : null };
  },

  'customers.get': (input, context) => {
    const found = findCustomer(context.db, input.customerId);
    if (found === undefined) return notFound('customers', input.customerId);
    return {
      customerId: found.customer.id,
      since: found.customer.since,
      note: found.customer.note,
      party: toParty(found.party),
      consents: listConsents(context.db, found.party.id).map(({ purpose, channel, granted, on, source }) => ({
        purpose: purpose as never,
        channel: channel as never,
        granted,
        on,
        source,
      })),
      sites: [...listSitesOf(context.db, input.customerId)],
      appliances: withOpenNotices(context.db, listAppliancesOfCustomer(context.db, input.customerId)),
    };
  },

  'customers.create': (input, context) => {
    const company = findCompany(context.db);
    const row = toPartyRow(input.party, company?.country ?? '');
    const foldedName = foldForSearch(row.name);
    if (!input.isKnownNew) {
      const others = listSimilarCustomers(context.db, { foldedName, phoneE164: row.phoneE164, email: row.email }).map(
        (other) => ({
          customerId: other.customerId,
          name: other.party.name,
          why:
            row.phoneE164 !== null && other.party.phoneE164 === row.phoneE164
              ? 'phone'
              : foldForSearch(other.party.name) === foldedName
                ? 'name'
                : 'e-mail',
        }),
      );
      if (others.length > 0) return fail('looks-like', { others });
    }
    const created = context.write((writer) => {
      const partyId = writer.insert(parties, row);
      const since = companyToday(context);
      return { partyId, customerId: writer.insert(customers, { partyId, since, note: input.note }) };
    });
    context.services.changed(['customers']);
    return created;
  },

  'customers.update': (input, context) => {
    const found = findCustomer(context.db, input.customerId);
    if (found === undefined) return notFound('customers', input.customerId);
    if (found.party.erasedAt !== null) return fail('person-erased', {});
    context.write((writer) => {
      writer.update(parties, found.party.id, toPartyRow(input.party, findCompany(context.db)?.country ?? ''));
      writer.update(customers, found.customer.id, { note: input.note });
    });
    context.services.changed(['customers']);
    return {};
  },

  'customers.recordConsent': (input, context) => {
    if (findParty(context.db, input.partyId) === undefined) return notFound('parties', input.partyId);
    if (input.on > companyToday(context)) return fail('day-in-future', {});
    context.write((writer) => writer.insert(consents, input));
    context.services.changed(['customers', 'registrations']);
    return {};
  },
};

export function toParty(row: typeof parties.$inferSelect): Party {
  const { id, searchText: _searchText, erasedAt: _erasedAt, kind, language, ...rest } = row;
  return { ...rest, partyId: id, kind: kind as Party['kind'], language: language as Party['language'] };
}
