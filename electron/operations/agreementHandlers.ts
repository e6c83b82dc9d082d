/** Service agreements: written, listed, put right, ended. Two of one appliance are never in force on the same day. */
import { findAgreement, listAgreements, listPartiesThere } from '../../db/agreements.ts';
import { findAppliance } from '../../db/appliances.ts';
import { findParty } from '../../db/customers.ts';
import { serviceAgreements } from '../../db/schema/index.ts';
import { agreementsOverlap } from '../../domain/service/serviceAgreement.ts';
import { fail, type HandlerContext, type Handlers, notFound } from './handler.ts';

export const agreementHandlers: Handlers<
  'agreements.list' | 'agreements.write' | 'agreements.update' | 'agreements.end'
> = {
  'agreements.list': (input, context) => ({
    agreements: listAgreements(context.store, input.applianceId).map(({ agreement, partyName }) => {
      const { id: agreementId, applianceId: _applianceId, ...fields } = agreement;
      return { agreementId, partyName, ...fields };
    }),
    parties: [...listPartiesThere(context.store, input.applianceId)],
  }),

  'agreements.write': (input, context) => {
    const { applianceId, agreement } = input;
    if (findAppliance(context.db, applianceId) === undefined) return notFound('appliances', applianceId);
    requireThere(context, applianceId, agreement.partyId);
    requireFree(context, applianceId, null, agreement);
    const agreementId = context.write((writer) => writer.insert(serviceAgreements, { applianceId, ...agreement }));
    context.services.changed(['appliances', 'service-due']);
    return { agreementId };
  },

  'agreements.update': (input, context) => {
    const { agreementId, agreement } = input;
    const before = findAgreement(context.store, agreementId) ?? notFound('service_agreements', agreementId);
    // Who it was made with may have moved out since: only somebody new has to be there.
    if (agreement.partyId !== before.partyId) requireThere(context, before.applianceId, agreement.partyId);
    requireFree(context, before.applianceId, agreementId, agreement);
    context.write((writer) => writer.update(serviceAgreements, agreementId, agreement));
    context.services.changed(['appliances', 'service-due']);
    return {};
  },

  'agreements.end': (input, context) => {
    const { agreementId, toOn } = input;
    const agreement = findAgreement(context.store, agreementId) ?? notFound('service_agreements', agreementId);
    requireFree(context, agreement.applianceId, agreementId, { fromOn: agreement.fromOn, toOn });
    context.write((writer) => writer.update(serviceAgreements, agreementId, { toOn }));
    context.services.changed(['appliances', 'service-due']);
    return {};
  },
};

function requireThere(context: HandlerContext, applianceId: string, partyId: string): void {
  const party = findParty(context.db, partyId) ?? notFound('parties', partyId);
  const isThere = listPartiesThere(context.store, applianceId).some((one) => one.partyId === partyId);
  if (!isThere) fail('party-not-there', { name: party.name });
}

function requireFree(
  context: HandlerContext,
  applianceId: string,
  exceptId: string | null,
  span: { readonly fromOn: string; readonly toOn: string | null },
): void {
  if (span.toOn !== null && span.toOn < span.fromOn) fail('days-out-of-order', { earlier: 'from', later: 'until' });
  const other = listAgreements(context.store, applianceId)
    .map(({ agreement }) => agreement)
    .find((one) => one.id !== exceptId && agreementsOverlap(one, span));
  if (other !== undefined) fail('agreement-overlaps', { fromOn: other.fromOn, toOn: other.toOn });
}
