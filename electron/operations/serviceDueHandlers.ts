/** Services and first-year contacts that fall due, the rounds they make, and who is to be reminded. */
import { findAppliance } from '../../db/appliances.ts';
import { listServiceConsents } from '../../db/dues/consents.ts';
import { countContacts, listDues, listRounds } from '../../db/dues/listDues.ts';
import { findParties } from '../../db/dues/parties.ts';
import { type DueSource, readDueFacts } from '../../db/dues/readDueFacts.ts';
import { firstYearContacts } from '../../db/schema/index.ts';
import { dayAt } from '../../domain/coverage/dayAt.ts';
import { addDays, addMonths, daysFromTo } from '../../domain/coverage/period.ts';
import { type Reminder, reminderOn } from '../../domain/service/reminderCadence.ts';
import { ridableMonth } from '../../domain/service/roundMonth.ts';
import { serviceAnchorOf } from '../../domain/service/serviceRule.ts';
import {
  dueDerivation,
  latestDerivation,
  OFFERED_DAYS_BEFORE,
  serviceSchedule,
} from '../../domain/service/serviceSchedule.ts';
import type { DUE_KINDS, ServiceDueRow } from '../contract/dues.ts';
import { nextOf, placeOf } from './deadlineHandlers.ts';
import { actorOf, type Handlers, notFound } from './handler.ts';

export const serviceDueHandlers: Handlers<
  'serviceDue.list' | 'serviceDue.get' | 'serviceDue.closeContact' | 'reminders.list'
> = {
  'serviceDue.list': (input, context) => {
    const { raw } = context.store;
    const utcToday = context.now.slice(0, 10);
    const thisMonth = utcToday.slice(0, 7);
    const found = listDues(raw, {
      kinds: [input.kind],
      isOpen: true,
      today: utcToday,
      area: input.area ?? undefined,
      months:
        input.month === null ? undefined : { from: input.month <= thisMonth ? null : input.month, to: input.month },
      isBooked: input.isBooked ?? undefined,
      // A contact is shown once its time has come; a service as far ahead as anybody plans.
      windowBegunBy: input.kind === 'service' ? undefined : utcToday,
      limit: input.limit,
      after: input.after,
    });
    const sources = sourcesOf(raw, found, context.now);
    const parties = findParties(
      context.db,
      found.flatMap(({ partyId }) => partyId ?? []),
    );
    return {
      rows: found.map((row) => {
        const today = dayAt(row.timeZone, context.now);
        return {
          ...placeOf(row),
          kind: row.kind as ServiceDueRow['kind'],
          windowFrom: row.windowFrom,
          dueOn: row.dueOn,
          latestOn: row.latestOn,
          daysToLatest: daysFromTo(today, row.latestOn),
          month: ridableMonth(row.month, today),
          area: row.area,
          sureness: row.sureness,
          ...derivationsOf(row.kind, sources.get(row.applianceId)),
          partyId: row.partyId,
          phone: row.partyId === null ? null : (parties.get(row.partyId)?.phoneTyped ?? null),
          jobId: row.jobId,
          visitId: row.visitId,
          bookedOn: row.bookedOn,
        };
      }),
      next: nextOf(found, input.limit),
    };
  },

  'serviceDue.get': (input, context) => {
    const today = context.now.slice(0, 10);
    const lastMonth = addMonths(`${today.slice(0, 7)}-01`, input.months - 1).slice(0, 7);
    return {
      rounds: [...listRounds(context.store.raw, today, lastMonth)],
      contacts: [...countContacts(context.store.raw, today)],
    };
  },

  'serviceDue.closeContact': (input, context) => {
    if (findAppliance(context.db, input.applianceId) === undefined) return notFound('appliances', input.applianceId);
    const byId = actorOf(context).staffId;
    context.write((writer) => {
      const existing = findContact(context.store.raw, input);
      if (existing === undefined) writer.insert(firstYearContacts, { ...input, byId });
      else writer.update(firstYearContacts, existing, { ...input, byId });
    });
    context.services.changed(['service-due']);
    return {};
  },

  'reminders.list': (input, context) => {
    const { raw } = context.store;
    const utcToday = context.now.slice(0, 10);
    const found = listDues(raw, {
      kinds: input.kinds,
      isOpen: true,
      today: utcToday,
      // A day wider on both sides: whether it stands is said by the day at the site.
      dueBefore: input.kinds.includes('service') ? addDays(utcToday, OFFERED_DAYS_BEFORE + 2) : undefined,
      latestFrom: addDays(utcToday, -1),
      isBooked: false,
      limit: input.limit,
      after: input.after,
    });
    const partyIds = found.flatMap(({ partyId }) => partyId ?? []);
    const parties = findParties(context.db, partyIds);
    const consents = listServiceConsents(raw, partyIds);
    const rows = found.flatMap((row) => {
      const party = row.partyId === null ? undefined : parties.get(row.partyId);
      const today = dayAt(row.timeZone, context.now);
      const standing = standingOf({ ...row, kind: row.kind as ServiceDueRow['kind'] }, today);
      if (party === undefined || party.erasedAt !== null || standing === null) return [];
      const channels = consents.get(party.id) ?? [];
      if (input.onlyReachable && channels.length === 0) return [];
      const hasOwnAddress = party.street !== null && party.city !== null;
      const from = hasOwnAddress ? party : row;
      return [
        {
          ...placeOf(row),
          key: `${row.applianceId} ${row.kind} ${row.dueOn} ${standing.stage}`,
          kind: row.kind as ServiceDueRow['kind'],
          partyId: party.id,
          partyName: party.name,
          language: party.language as 'en' | null,
          email: party.email,
          phone: party.phoneTyped,
          postalAddress: {
            street: from.street,
            postcode: from.postcode,
            city: from.city,
            region: from.region,
            country: from.country,
          },
          purpose: 'service-due' as const,
          dueOn: row.dueOn,
          latestOn: row.latestOn,
          daysToLatest: daysFromTo(today, row.latestOn),
          ...standing,
          channels: [...channels],
          sureness: row.sureness,
        },
      ];
    });
    return { rows, next: nextOf(found, input.limit) };
  },
};

/** A contact is one reminder, from the first day of its time to the last. */
function standingOf(
  due: {
    readonly kind: (typeof DUE_KINDS)[number];
    readonly windowFrom: string;
    readonly dueOn: string;
    readonly latestOn: string;
  },
  today: string,
): { readonly stage: string; readonly sendOn: string; readonly nextSendOn: string | null } | null {
  if (due.kind !== 'service') {
    const stands = due.windowFrom <= today && today <= due.latestOn;
    return stands ? { stage: due.kind, sendOn: due.windowFrom, nextSendOn: null } : null;
  }
  const { now, next }: { readonly now: Reminder | null; readonly next: Reminder | null } = reminderOn(due, today);
  return now === null ? null : { ...now, nextSendOn: next?.sendOn ?? null };
}

function sourcesOf(
  raw: Parameters<typeof readDueFacts>[0],
  rows: readonly { readonly applianceId: string }[],
  now: string,
): ReadonlyMap<string, DueSource> {
  const ids = rows.map(({ applianceId }) => applianceId);
  return new Map(readDueFacts(raw, ids, now).map((source) => [source.applianceId, source]));
}

function derivationsOf(kind: string, source: DueSource | undefined): Pick<ServiceDueRow, 'due' | 'latest'> {
  if (kind !== 'service' || source === undefined) return { due: null, latest: null };
  const { serviceRule, dates, servicesOn } = source.facts;
  const anchor = serviceAnchorOf(serviceRule, dates, servicesOn);
  if (anchor === null) return { due: null, latest: null };
  const { next } = serviceSchedule(serviceRule, anchor, servicesOn);
  return { due: dueDerivation(next, anchor), latest: latestDerivation(next, anchor) };
}

function findContact(
  raw: Parameters<typeof readDueFacts>[0],
  of: { readonly applianceId: string; readonly kind: string },
): string | undefined {
  return raw
    .prepare('SELECT id FROM first_year_contacts WHERE appliance_id = ? AND kind = ?')
    .pluck()
    .get(of.applianceId, of.kind) as string | undefined;
}
