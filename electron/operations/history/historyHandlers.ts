/** What happened to an appliance. */
import {
  listClaims,
  listCurrentReadings,
  listDocumentsOfAppliance,
  listFittedParts,
  listMessagesAbout,
  listOwners,
  listPhotosOfRuns,
  listRecallOutcomesOf,
} from '../../../db/applianceHistory.ts';
import {
  findAppliance,
  findApplianceSummary,
  listApplianceDates,
  listFuelStates,
  listMakeSafes,
  listVisitsOfAppliance,
} from '../../../db/appliances.ts';
import { findCustomer } from '../../../db/customers.ts';
import type { ReadableDb } from '../../../db/openStore.ts';
import { findCompany } from '../../../db/people.ts';
import { findRegistration } from '../../../db/registrations.ts';
import { listSiteTransfers } from '../../../db/siteTransfers.ts';
import type { HistoryEntry } from '../../contract/history.ts';
import { type Handlers, notFound } from '../handler.ts';
import { dayIn } from '../today.ts';

export const historyHandlers: Handlers<'history.get'> = {
  'history.get': (input, context) => {
    const { db } = context;
    const appliance = findAppliance(db, input.applianceId);
    const summary = findApplianceSummary(db, input.applianceId);
    if (appliance === undefined || summary === undefined) return notFound('appliances', input.applianceId);
    const timeZone = findCompany(db)?.timeZone ?? 'UTC';
    return {
      applianceId: appliance.id,
      serial: appliance.serial,
      maker: appliance.maker,
      model: appliance.model,
      siteId: summary.siteId,
      where: [summary.street, summary.city].filter(Boolean).join(', ') || null,
      customerId: summary.customerId,
      owners: ownersOf(db, appliance.id, summary.siteId, summary.customerId),
      entries: entriesOf(db, appliance.id, summary.siteId, timeZone),
    };
  },
};

function ownersOf(db: ReadableDb, applianceId: string, siteId: string | null, customerId: string | null) {
  const written = listOwners(db, applianceId, siteId).map(({ role, party }) => ({
    name: party.name,
    fromOn: role.fromOn,
    toOn: role.toOn,
    // Whoever sold the house is nobody's business any more but by name.
    phone: role.toOn === null ? party.phoneTyped : null,
    email: role.toOn === null ? party.email : null,
  }));
  const customer = customerId === null ? undefined : findCustomer(db, customerId);
  const isWritten = written.some(({ toOn }) => toOn === null);
  const now =
    customer === undefined || isWritten
      ? []
      : [
          {
            name: customer.party.name,
            fromOn: null,
            toOn: null,
            phone: customer.party.phoneTyped,
            email: customer.party.email,
          },
        ];
  return [...now, ...written].toSorted((a, b) => (b.toOn ?? '9999').localeCompare(a.toOn ?? '9999'));
}

function entriesOf(db: ReadableDb, applianceId: string, siteId: string | null, timeZone: string): HistoryEntry[] {
  const registration = findRegistration(db, applianceId);
  const entries: HistoryEntry[] = [
    ...visitEntries(db, applianceId),
    ...listApplianceDates(db, applianceId).map(({ kind, on, source }) => entry(on, 'date', kind, source)),
    ...listFuelStates(db, applianceId).map(({ fuel, fromOn, conversionKit }) =>
      entry(fromOn, 'fuel', fuel, conversionKit),
    ),
    ...listFittedParts(db, applianceId).map(({ fittedOn, partNumber, name, visitId }) => ({
      ...entry(fittedOn, 'part', partNumber, name),
      visitId,
    })),
    ...listMakeSafes(db, applianceId).flatMap(({ makeSafe }) => [
      { ...entry(dayIn(timeZone, makeSafe.openedAt), 'make-safe', 'opened', makeSafe.what), visitId: makeSafe.visitId },
      ...(makeSafe.closedAt === null
        ? []
        : [entry(dayIn(timeZone, makeSafe.closedAt), 'make-safe', 'closed', makeSafe.closedReason)]),
    ]),
    ...(registration?.submittedOn == null
      ? []
      : [entry(registration.submittedOn, 'registration', 'submitted', registration.note)]),
    ...(registration?.confirmedOn == null
      ? []
      : [
          {
            ...entry(registration.confirmedOn, 'registration', 'confirmed', registration.number),
            attachmentId: registration.proofAttachmentId,
          },
        ]),
    ...listDocumentsOfAppliance(db, applianceId).map(({ issuedAt, isDraft, attachmentId, runId }) => ({
      ...entry(dayIn(timeZone, issuedAt), 'document', isDraft ? 'draft' : 'packet', null),
      attachmentId,
      runId,
    })),
    ...listOwners(db, applianceId, siteId).flatMap(({ role, party }) =>
      role.fromOn === null ? [] : [entry(role.fromOn, 'owner', 'from', party.name)],
    ),
    ...(siteId === null ? [] : takenBackTransfers(db, siteId, timeZone)),
    ...listClaims(db, { applianceId, openOnly: false }).map(({ claim }) =>
      entry(claim.openedOn, 'claim', claim.outcome, [claim.partNumber, claim.partName].filter(Boolean).join(', ')),
    ),
    ...listMessagesAbout(db, applianceId).map(({ preparedAt, kind, subject, attachmentId }) => ({
      ...entry(dayIn(timeZone, preparedAt), 'message', kind, subject),
      attachmentId,
    })),
    ...listRecallOutcomesOf(db, applianceId).map(({ outcome, title }) =>
      entry(outcome.on, 'recall', outcome.outcome, title),
    ),
  ];
  return entries.toSorted((a, b) => b.on.localeCompare(a.on));
}

/** A house handed over by mistake: both stand, the handing over and the way back from it. */
function takenBackTransfers(db: ReadableDb, siteId: string, timeZone: string): readonly HistoryEntry[] {
  return listSiteTransfers(db, siteId).flatMap(({ transfer, toName }) =>
    transfer.takenBackAt === null
      ? []
      : [
          entry(transfer.changedOn, 'owner', 'mistaken', toName),
          entry(dayIn(timeZone, transfer.takenBackAt), 'owner', 'taken-back', transfer.takenBackWhy),
        ],
  );
}

function visitEntries(db: ReadableDb, applianceId: string): readonly HistoryEntry[] {
  const visits = listVisitsOfAppliance(db, applianceId);
  const runIds = visits.flatMap(({ runId }) => runId ?? []);
  const readings = Map.groupBy(listCurrentReadings(db, runIds), (reading) => reading.runId);
  const photos = Map.groupBy(listPhotosOfRuns(db, runIds), (link) => link.entityId);
  return visits.map(({ visitId, runId, kind, plannedOn, state, outcome, sealedAt }) => ({
    ...entry(plannedOn, 'visit', kind, sealedAt === null ? (outcome ?? state) : 'sealed'),
    visitId,
    runId,
    readings: (readings.get(runId ?? '') ?? []).map(({ quantity, point, valueOwn, comparator }) => ({
      quantity,
      point,
      valueOwn,
      comparator,
    })),
    photos: (photos.get(runId ?? '') ?? []).map(({ attachmentId, itemKey }) => ({ attachmentId, itemKey })),
  }));
}

function entry(on: string, kind: HistoryEntry['kind'], what: string, detail: string | null): HistoryEntry {
  return { on, kind, what, detail, visitId: null, runId: null, attachmentId: null, readings: [], photos: [] };
}
