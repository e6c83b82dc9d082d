/** Service agreements: written, listed, ended. Two of one appliance are never in force on the same day. */
import { findAgreement, listAgreements, listPartiesThere } from '../../db/agreements.ts';
import { findAppliance } from '../../db/appliances.ts';
import { findParty } from '../../db/customers.ts';
import { serviceAgreements } from '../../db/schema/index.ts';
import { agreementsOverlap } from '../../domain/service/serviceAgreement.ts';
import { fail, type HandlerContext, type Handlers, notFound } from './handler.ts';

export const agreementHandlers: Handlers<'agreements.list' | 'agreements.write' | 'agreements.end'> = {
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
    if (findParty(context.db, agreement.partyId) === undefined) return notFound('parties', agreement.partyId);
    requireFree(context, applianceId, null, agreement);
    const agreementId = context.write((writer) => writer.insert(serviceAgreements, { applianceId, ...agreement }));
    context.services.changed(['appliances', 'service-due']);
    return { agreementId };
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
