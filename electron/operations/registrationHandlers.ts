/** Who registers, what was submitted and what the maker confirmed. */
import { findAppliance } from '../../db/appliances.ts';
import { findAttachment } from '../../db/attachments.ts';
import { findRegistrationConsent } from '../../db/dues/consents.ts';
import type { ReadableDb } from '../../db/openStore.ts';
import { findRegistration, listIssuedDocuments, type RegistrationRecord } from '../../db/registrations.ts';
import { registrations } from '../../db/schema/index.ts';
import { fail, type Handlers, notFound } from './handler.ts';
import { listRegistrationRows, readRegistration } from './registrationRows.ts';

export const registrationHandlers: Handlers<
  'registrations.list' | 'registrations.get' | 'registrations.decide' | 'registrations.submit' | 'registrations.confirm'
> = {
  'registrations.list': (input, context) => listRegistrationRows(context, input),

  'registrations.get': (input, context) => {
    const record = requireRegistration(context.db, input.applianceId);
    const row = readRegistration(context, input.applianceId);
    if (row === undefined) return notFound('registrations', input.applianceId);
    return {
      ...row,
      gaps: [...row.gaps],
      ownerConsentOn: record.ownerConsentOn,
      consentOnFileOn: findRegistrationConsent(context.store.raw, input.applianceId),
      submittedOn: record.submittedOn,
      confirmedOn: record.confirmedOn,
      number: record.number,
      proofAttachmentId: record.proofAttachmentId,
      note: record.note,
      documents:
        row.runId === null
          ? []
          : listIssuedDocuments(context.db, row.runId).map(({ attachmentId, kind, isDraft, gapReason, issuedAt }) => ({
              attachmentId,
              kind: kind as 'packet-pdf',
              isDraft,
              gapReason,
              issuedAt,
            })),
    };
  },

  'registrations.decide': (input, context) => {
    const { applianceId, ...decision } = input;
    if (findAppliance(context.db, applianceId) === undefined) return notFound('appliances', applianceId);
    if (decision.by === 'office' && decision.ownerConsentOn === null) return fail('consent-missing', {});
    if (decision.by === 'owner' && decision.followUpOn === null) return fail('follow-up-missing', {});
    context.write((writer) => {
      const existing = findRegistration(writer.db, applianceId);
      if (existing === undefined) writer.insert(registrations, { applianceId, state: 'recording', ...decision });
      else writer.update(registrations, existing.id, decision);
    });
    context.services.changed(['registrations']);
    return {};
  },

  'registrations.submit': (input, context) => {
    const record = requireRegistration(context.db, input.applianceId);
    const row = readRegistration(context, input.applianceId);
    const hasPacket =
      row?.runId != null &&
      listIssuedDocuments(context.db, row.runId).some((one) => one.kind === 'packet-pdf' && !one.isDraft);
    if (!hasPacket) return fail('packet-missing', {});
    context.write((writer) =>
      writer.update(registrations, record.id, { state: 'submitted', submittedOn: input.submittedOn, note: input.note }),
    );
    context.services.changed(['registrations']);
    return {};
  },

  'registrations.confirm': (input, context) => {
    const record = requireRegistration(context.db, input.applianceId);
    if (record.submittedOn === null) return fail('not-submitted', {});
    if (input.proofAttachmentId !== null && findAttachment(context.db, input.proofAttachmentId) === undefined) {
      return notFound('attachments', input.proofAttachmentId);
    }
    const { applianceId: _applianceId, ...fields } = input;
    context.write((writer) => writer.update(registrations, record.id, { state: 'confirmed', ...fields }));
    context.services.changed(['registrations']);
    return {};
  },
};

function requireRegistration(db: ReadableDb, applianceId: string): RegistrationRecord {
  return findRegistration(db, applianceId) ?? notFound('registrations', applianceId);
}
