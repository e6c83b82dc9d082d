/** Services and first-year contacts that fall due, the rounds they make, and who is to be reminded. */
import { findAppliance } from '../../db/appliances.ts';
import { findFirstYearContact } from '../../db/coverEvents.ts';
import { countContacts, listDues, listRounds } from '../../db/dues/listDues.ts';
import { findParties } from '../../db/dues/parties.ts';
import { type DueSource, readDueFacts } from '../../db/dues/readDueFacts.ts';
import { firstYearContacts } from '../../db/schema/index.ts';
import { dayAt } from '../../domain/coverage/dayAt.ts';
import { addMonths, daysFromTo } from '../../domain/coverage/period.ts';
import { explainService } from '../../domain/service/explainService.ts';
import { nextService } from '../../domain/service/nextService.ts';
import { ridableMonth } from '../../domain/service/roundMonth.ts';
import type { ServiceDueRow } from '../contract/dues.ts';
import { nextOf, placeOf } from './deadlineHandlers.ts';
import { actorOf, type Handlers, notFound } from './handler.ts';
import { readReminders } from './reminderRows.ts';

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
          demands: row.kind === 'service' ? demandsOf(sources.get(row.applianceId)) : [],
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
      const existing = findFirstYearContact(writer.db, input.applianceId, input.kind);
      if (existing === undefined) writer.insert(firstYearContacts, { ...input, byId });
      else writer.update(firstYearContacts, existing, { ...input, byId });
    });
    context.services.changed(['service-due']);
    return {};
  },

  'reminders.list': (input, context) => readReminders(context, input),
};

function sourcesOf(
  raw: Parameters<typeof readDueFacts>[0],
  rows: readonly { readonly applianceId: string }[],
  now: string,
): ReadonlyMap<string, DueSource> {
  const ids = rows.map(({ applianceId }) => applianceId);
  return new Map(readDueFacts(raw, ids, now).map((source) => [source.applianceId, source]));
}

function demandsOf(source: DueSource | undefined): ServiceDueRow['demands'] {
  const next = source === undefined ? null : nextService(source.facts);
  return next === null ? [] : [...explainService(next).demands];
}
