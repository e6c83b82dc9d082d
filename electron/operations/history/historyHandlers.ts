/** What happened to an appliance, and the change of its owner. */
import {
  listClaims,
  listCurrentReadings,
  listDocumentsOfAppliance,
  listFittedParts,
  listMessagesAbout,
  listOpenRolesAtSite,
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
import { customers, parties, partyRoles, sites } from '../../../db/schema/index.ts';
import { findSite } from '../../../db/sites.ts';
import type { StoreWriter } from '../../../db/storeWriter.ts';
import type { HistoryEntry } from '../../contract/history.ts';
import type { PartyFields } from '../../contract/parties.ts';
import { fail, type Handlers, notFound } from '../handler.ts';
import { toPartyRow } from '../partyFields.ts';
import { dayIn } from '../today.ts';

export const historyHandlers: Handlers<'history.get' | 'sites.transfer'> = {
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
    const customerId = context.write((writer) => {
      endRoles(writer, site.id, before.party.id, input.on);
      const next = 'customerId' in to ? to.customerId : fileCustomer(writer, to, input.on);
      const partyId = findCustomer(writer.db, next)?.party.id ?? notFound('customers', next);
      writer.insert(partyRoles, { partyId, role: 'owner', siteId: site.id, fromOn: input.on });
      writer.update(sites, site.id, { customerId: next });
      return next;
    });
    context.services.changed(['customers', 'sites', 'appliances', 'registrations']);
    return { customerId };
  },
};

/** Everybody's ownership ends, and whatever else the former owner was here; an owner never written down as one is, for the history. */
function endRoles(writer: StoreWriter, siteId: string, formerPartyId: string, on: string): void {
  const open = listOpenRolesAtSite(writer.db, siteId);
  for (const role of open) {
    if (role.role === 'owner' || role.partyId === formerPartyId) writer.update(partyRoles, role.id, { toOn: on });
  }
  if (!open.some((role) => role.role === 'owner')) {
    writer.insert(partyRoles, { partyId: formerPartyId, role: 'owner', siteId, fromOn: null, toOn: on });
  }
}

function fileCustomer(writer: StoreWriter, party: PartyFields, since: string): string {
  const partyId = writer.insert(parties, toPartyRow(party, findCompany(writer.db)?.country ?? ''));
  return writer.insert(customers, { partyId, since, note: null });
}

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
