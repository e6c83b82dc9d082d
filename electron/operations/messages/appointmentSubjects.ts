/**
 * Messages about booked visits: that it is booked, the reminder before it, and that somebody is on the way. A customer asked
 * for the visit, so these go out unless they said no to appointments by this channel.
 */
import { listVisitContacts, type VisitContact } from '../../../db/appointments.ts';
import { listConsents } from '../../../db/dues/consents.ts';
import { dayAt } from '../../../domain/coverage/dayAt.ts';
import { addDays } from '../../../domain/coverage/period.ts';
import { dayInLanguage } from '../../../domain/messages/dayInLanguage.ts';
import type { MessageKind, MessageLanguage } from '../../../domain/messages/messageKinds.ts';
import { visitWindowText } from '../../../domain/messages/visitWindowText.ts';
import { appointmentReminderOn } from '../../../domain/service/appointmentCadence.ts';
import type { ReadContext } from '../handler.ts';
import { type MessageSubject, postalAddressOf, siteText } from './messageSubject.ts';

export const APPOINTMENT_KINDS = [
  'appointment',
  'appointment-reminder',
  'on-the-way',
] as const satisfies readonly MessageKind[];
export type AppointmentKind = (typeof APPOINTMENT_KINDS)[number];

/** Booked further ahead than this nobody needs it in writing yet. */
const DAYS_AHEAD = 120;

/** `visit … appointment-reminder` */
export function appointmentSubjects(context: ReadContext, keys: readonly string[]): readonly MessageSubject[] {
  const wanted = new Set(keys);
  return APPOINTMENT_KINDS.flatMap((kind) => standingAppointments(context, kind)).filter(({ key }) => wanted.has(key));
}

export function standingAppointments(context: ReadContext, kind: AppointmentKind): readonly MessageSubject[] {
  const utcToday = context.now.slice(0, 10);
  // A day wider on both sides: whether it stands is said by the day at the site.
  const found = listVisitContacts(context.store.raw, {
    from: addDays(utcToday, -1),
    to: addDays(utcToday, DAYS_AHEAD),
  });
  const consents = listConsents(
    context.store.raw,
    found.map(({ partyId }) => partyId),
    'appointments',
  );
  return found.flatMap((visit) => {
    const today = dayAt(visit.timeZone, context.now);
    const standing = standingOf(kind, visit, today);
    return standing === null ? [] : [toSubject(kind, visit, standing.sendOn, consents.get(visit.partyId))];
  });
}

/** null: it does not stand today. `sendOn` null: it is sent once, whenever that is. */
function standingOf(
  kind: AppointmentKind,
  { plannedOn }: VisitContact,
  today: string,
): { readonly sendOn: string | null } | null {
  if (plannedOn < today) return null;
  switch (kind) {
    case 'appointment':
      return { sendOn: null };
    case 'appointment-reminder': {
      const sendOn = appointmentReminderOn(plannedOn, today);
      return sendOn === null ? null : { sendOn };
    }
    case 'on-the-way':
      return plannedOn === today ? { sendOn: null } : null;
  }
}

function toSubject(
  kind: AppointmentKind,
  visit: VisitContact,
  sendOn: string | null,
  consents: ReadonlyMap<string, boolean> | undefined,
): MessageSubject {
  return {
    key: `visit ${visit.visitId} ${kind}`,
    kind,
    partyId: visit.partyId,
    partyName: visit.partyName,
    language: visit.language as MessageLanguage | null,
    email: visit.email,
    phone: visit.phone,
    postalAddress: postalAddressOf(
      {
        street: visit.partyStreet,
        postcode: visit.partyPostcode,
        city: visit.partyCity,
        region: visit.partyRegion,
        country: visit.partyCountry,
      },
      visit,
    ),
    applianceId: visit.applianceId,
    visitId: visit.visitId,
    recallId: null,
    aboutOn: visit.plannedOn,
    applianceName: `${visit.maker} ${visit.model}`,
    serial: visit.serial,
    site: siteText(visit),
    mayUse: (channel) => consents?.get(channel) !== false,
    sendOn,
    valuesIn: (language) => ({
      visitOn: dayInLanguage(visit.plannedOn, language),
      visitWindow: visitWindowText(visit, language),
      technician: visit.technicianName,
    }),
  };
}
