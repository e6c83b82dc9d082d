/** The reminders that stand today, with where they may go: what the list shows and what is written to people. */
import { listServiceConsents } from '../../db/dues/consents.ts';
import { listDues } from '../../db/dues/listDues.ts';
import { findParties } from '../../db/dues/parties.ts';
import { dayAt } from '../../domain/coverage/dayAt.ts';
import { addDays, daysFromTo } from '../../domain/coverage/period.ts';
import { type Reminder, reminderOn } from '../../domain/service/reminderCadence.ts';
import { OFFERED_DAYS_BEFORE } from '../../domain/service/serviceSchedule.ts';
import type { DUE_KINDS, ServiceDueRow } from '../contract/dues.ts';
import type { OutputOf, ParsedInputOf } from '../contract/index.ts';
import { nextOf, placeOf } from './deadlineHandlers.ts';
import type { ReadContext } from './handler.ts';

export function readReminders(
  context: ReadContext,
  input: ParsedInputOf<'reminders.list'>,
  narrowedTo: { readonly applianceIds?: readonly string[]; readonly askedAbout?: string } = {},
): OutputOf<'reminders.list'> {
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
    ...narrowedTo,
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
}

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
