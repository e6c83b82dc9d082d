/** Who registers, what was submitted and what the maker confirmed. */
import { findAppliance, listApplianceDates } from '../../db/appliances.ts';
import { findAttachment } from '../../db/attachments.ts';
import { findRegistrationConsent } from '../../db/dues/consents.ts';
import type { ReadableDb } from '../../db/openStore.ts';
import { findRegistration, listIssuedDocuments, type RegistrationRecord } from '../../db/registrations.ts';
import { registrations } from '../../db/schema/index.ts';
import type { KnownDate } from '../../domain/coverage/knownDate.ts';
import { dateOrderProblems } from '../../domain/judgement/mistakes/dateOrderProblems.ts';
import { companyToday } from './companyToday.ts';
import { fail, type HandlerContext, type Handlers, notFound } from './handler.ts';
import { listRegistrationRows, readRegistration } from './registrationRows.ts';

export const registrationHandlers: Handlers<
  | 'registrations.list'
  | 'registrations.get'
  | 'registrations.decide'
  | 'registrations.submit'
  | 'registrations.confirm'
  | 'registrations.correct'
  | 'registrations.takeBack'
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
      takenBackWhy: record.takenBackWhy,
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
    if ((decision.ownerConsentOn ?? '') > companyToday(context)) return fail('day-in-future', {});
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
    requireSubmittedDay(context, input.applianceId, input.submittedOn);
    context.write((writer) =>
      writer.update(registrations, record.id, {
        state: 'submitted',
        submittedOn: input.submittedOn,
        note: input.note,
        takenBackWhy: null,
      }),
    );
    context.services.changed(['registrations']);
    return {};
  },

  'registrations.confirm': (input, context) => {
    const record = requireRegistration(context.db, input.applianceId);
    if (record.submittedOn === null) return fail('not-submitted', {});
    requireConfirmedDay(context, record.submittedOn, input.confirmedOn);
    if (input.proofAttachmentId !== null && findAttachment(context.db, input.proofAttachmentId) === undefined) {
      return notFound('attachments', input.proofAttachmentId);
    }
    const { applianceId: _applianceId, ...fields } = input;
    context.write((writer) =>
      writer.update(registrations, record.id, { state: 'confirmed', ...fields, takenBackWhy: null }),
    );
    context.services.changed(['registrations']);
    return {};
  },

  'registrations.correct': (input, context) => {
    const record = requireRegistration(context.db, input.applianceId);
    if (record.submittedOn === null) return fail('not-submitted', {});
    const { submittedOn, note, confirmation, why } = input;
    // Confirmed, or taken back, by somebody else meanwhile.
    if ((confirmation !== null) !== (record.state === 'confirmed')) return fail('registration-changed', {});
    requireSubmittedDay(context, input.applianceId, submittedOn);
    if (confirmation !== null) requireConfirmedDay(context, submittedOn, confirmation.confirmedOn);
    context.write((writer) =>
      writer.update(registrations, record.id, { submittedOn, note, ...confirmation, takenBackWhy: why }),
    );
    context.services.changed(['registrations']);
    return {};
  },

  'registrations.takeBack': (input, context) => {
    const record = requireRegistration(context.db, input.applianceId);
    if (record.state !== input.step) return fail('registration-changed', {});
    const before =
      input.step === 'confirmed'
        ? { state: 'submitted', confirmedOn: null, number: null, proofAttachmentId: null }
        : { state: 'recording', submittedOn: null, note: null };
    context.write((writer) => writer.update(registrations, record.id, { ...before, takenBackWhy: input.why }));
    context.services.changed(['registrations']);
    return {};
  },
};

function requireConfirmedDay(context: HandlerContext, submittedOn: string, confirmedOn: string): void {
  if (confirmedOn > companyToday(context)) fail('day-in-future', {});
  if (confirmedOn < submittedOn) fail('day-too-early', { after: 'submitted', on: submittedOn });
}

function requireRegistration(db: ReadableDb, applianceId: string): RegistrationRecord {
  return findRegistration(db, applianceId) ?? notFound('registrations', applianceId);
}

/** Handed in after everything it tells of, and not in days to come. */
function requireSubmittedDay(context: HandlerContext, applianceId: string, submittedOn: string): void {
  const known = listApplianceDates(context.db, applianceId) as readonly KnownDate[];
  const registered = { kind: 'registered', on: submittedOn, precision: 'day' } as const;
  const problem = dateOrderProblems([...known, registered], companyToday(context)).find(
    ({ isImpossible, earlier, later }) => isImpossible && (later === 'registered' || earlier === 'registered'),
  );
  if (problem === undefined) return;
  if (problem.later === 'today') fail('day-in-future', {});
  const before = known.find(({ kind }) => kind === problem.earlier);
  if (before !== undefined) fail('day-too-early', { after: before.kind, on: before.on });
}
