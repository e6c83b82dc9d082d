/** Which language the handover sheet speaks when nobody says otherwise: that of whoever lives there, as far as it is on file. */
import { findCustomer, listSiteRoles } from '../../db/customers.ts';
import { findCompany } from '../../db/people.ts';
import { findLastPlacement } from '../../db/placements.ts';
import { findSite } from '../../db/sites.ts';
import type { MessageLanguage } from '../../domain/messages/messageKinds.ts';
import type { OutputOf } from '../contract/index.ts';
import { type HandlerContext, notFound } from './handler.ts';
import { dayIn } from './today.ts';

export function handoverLanguage(context: HandlerContext, applianceId: string): OutputOf<'handovers.getLanguage'> {
  const { db } = context;
  const placement = findLastPlacement(db, applianceId);
  const site = placement === undefined ? undefined : findSite(db, placement.siteId);
  const occupant = site === undefined ? undefined : occupantOf(context, site);
  if (occupant?.language != null)
    return { language: occupant.language as MessageLanguage, of: 'occupant', name: occupant.name };
  const customer = site === undefined ? undefined : findCustomer(db, site.customerId);
  if (customer?.party.language != null)
    return { language: customer.party.language as MessageLanguage, of: 'customer', name: customer.party.name };
  const company = findCompany(db) ?? notFound('companies', 'this');
  return { language: company.language as MessageLanguage, of: 'company', name: company.name };
}

/** Whoever lives there today; of several, one whose language is known. */
function occupantOf({ db, now }: HandlerContext, site: { readonly id: string; readonly timeZone: string }) {
  const today = dayIn(site.timeZone, now);
  const occupants = listSiteRoles(db, site.id).filter(
    ({ role, fromOn, toOn }) =>
      role === 'occupant' && (fromOn === null || fromOn <= today) && (toOn === null || toOn >= today),
  );
  return (occupants.find(({ party }) => party.language !== null) ?? occupants[0])?.party;
}
