/** Messages for the reminders that stand: only by channels somebody agreed to. */
import { dayInLanguage } from '../../../domain/messages/dayInLanguage.ts';
import type { WrittenChannel } from '../../../domain/messages/messageKinds.ts';
import type { DUE_KINDS, ReminderRow } from '../../contract/dues.ts';
import type { ReadContext } from '../handler.ts';
import { readReminders } from '../reminderRows.ts';
import { type MessageSubject, siteText } from './messageSubject.ts';

type DueKind = (typeof DUE_KINDS)[number];
const KINDS: readonly (readonly [DueKind, ...DueKind[]])[] = [['service'], ['first-call', 'look-in']];
const PAGE = 200;

/** Those of these keys that still stand. */
export function reminderSubjects(context: ReadContext, keys: readonly string[]): readonly MessageSubject[] {
  const wanted = new Set(keys);
  const applianceIds = [...new Set(keys.map((key) => key.split(' ')[0] ?? ''))];
  return KINDS.flatMap((kinds) => pages(context, kinds, { applianceIds }))
    .filter(({ key }) => wanted.has(key))
    .map(toSubject);
}

/** Every reminder that stands and whose person agreed to this channel. */
export function standingReminders(context: ReadContext, channel: WrittenChannel): readonly MessageSubject[] {
  const rows = KINDS.flatMap((kinds) => pages(context, kinds, { askedAbout: channel }));
  const withService = new Set(rows.filter(({ kind }) => kind === 'service').map(({ applianceId }) => applianceId));
  // Whoever is written to about the service is not asked in a second letter how the same boiler is doing.
  return rows
    .filter(({ kind, applianceId }) => kind === 'service' || !withService.has(applianceId))
    .filter(({ channels }) => channels.includes(channel))
    .map(toSubject);
}

function pages(
  context: ReadContext,
  kinds: readonly DueKind[],
  narrowedTo: { readonly applianceIds?: readonly string[]; readonly askedAbout?: string },
): readonly ReminderRow[] {
  const rows: ReminderRow[] = [];
  let after: string | null = null;
  do {
    const page = readReminders(context, { kinds: [...kinds], onlyReachable: false, limit: PAGE, after }, narrowedTo);
    rows.push(...page.rows);
    after = page.next;
  } while (after !== null);
  return rows;
}

function toSubject(row: ReminderRow): MessageSubject {
  return {
    key: row.key,
    kind: row.kind === 'service' ? 'service-due' : 'first-year',
    partyId: row.partyId,
    partyName: row.partyName,
    language: row.language,
    email: row.email,
    phone: row.phone,
    postalAddress: row.postalAddress,
    applianceId: row.applianceId,
    visitId: null,
    recallId: null,
    aboutOn: row.dueOn,
    applianceName: `${row.maker} ${row.model}`,
    serial: row.serial,
    site: siteText(row),
    mayUse: (channel) => row.channels.includes(channel),
    sendOn: row.sendOn,
    valuesIn: (language) => ({
      dueOn: dayInLanguage(row.dueOn, language),
      latestOn: dayInLanguage(row.latestOn, language),
    }),
  };
}
