/** A message as a line of a table for mail merge. */
import type { MergeRow } from '../../documents/messages/mailMergeCsv.ts';
import type { Composed } from './composeMessages.ts';

export function toMergeRow({ subject, filled, language }: Composed): MergeRow {
  return {
    name: subject.partyName,
    ...subject.postalAddress,
    email: subject.email,
    phone: subject.phone,
    language,
    appliance: subject.applianceName,
    serial: subject.serial,
    aboutOn: subject.aboutOn,
    subject: filled.subject,
    body: filled.body,
  };
}
