/** Each reminder as it would read to its person, in their language, and why it can't go out where it can't. */
import { lastPreparedAt, listTemplates } from '../../db/messages.ts';
import { findCompany } from '../../db/people.ts';
import {
  awaitsNativeReader,
  builtInWording,
  carriesSafetyWords,
  type MessageKind,
  type MessageLanguage,
  safetyWords,
} from '../../domain/messages/builtInWordings.ts';
import { dayInLanguage } from '../../domain/messages/dayInLanguage.ts';
import { type Filled, fillTemplate, type MessageValues, type Wording } from '../../domain/messages/fillTemplate.ts';
import type { ReminderRow } from '../contract/dues.ts';
import type { OutputOf, ParsedInputOf } from '../contract/index.ts';
import type { LEFT_OUT } from '../contract/messages.ts';
import { type HandlerContext, notFound } from './handler.ts';
import { readReminders } from './reminderRows.ts';

type Asked = Pick<ParsedInputOf<'messages.check'>, 'keys' | 'channel' | 'language'>;
export type LeftOutBecause = (typeof LEFT_OUT)[number];

export type Composed = {
  readonly key: string;
  readonly row: ReminderRow;
  readonly kind: MessageKind;
  readonly language: MessageLanguage;
  readonly filled: Filled;
  readonly isOwnWording: boolean;
  readonly leftOutBecause: LeftOutBecause | null;
};

const PAGE = 200;

/** In the order asked for; a key that stands no longer is left away by `composeMessages` and named by the caller. */
export function composeMessages(context: HandlerContext, asked: Asked): readonly Composed[] {
  const company = findCompany(context.db) ?? notFound('companies', 'this');
  const own = listTemplates(context.db);
  const wanted = new Set(asked.keys);
  const rows = standingRows(context, wanted);
  return asked.keys.flatMap((key): Composed[] => {
    const row = rows.get(key);
    if (row === undefined) return [];
    const kind: MessageKind = row.kind === 'service' ? 'service-due' : 'first-year';
    const language = asked.language ?? row.language ?? (company.language as MessageLanguage);
    const template = own.find((one) => one.kind === kind && one.channel === asked.channel && one.language === language);
    const wording: Wording = template ?? builtInWording(kind, language);
    const safety = safetyWords(company.emergencyNumber, language);
    const values: MessageValues = {
      name: row.partyName,
      appliance: `${row.maker} ${row.model}`,
      serial: row.serial,
      site: [row.street, row.city].filter(Boolean).join(', '),
      dueOn: dayInLanguage(row.dueOn, language),
      latestOn: dayInLanguage(row.latestOn, language),
      firmName: company.name,
      firmPhone: company.phone,
      firmEmail: company.email,
      emergencyNumber: company.emergencyNumber,
      safetyWords: safety,
    };
    const filled = fillTemplate(wording, values);
    const lacksNumber = carriesSafetyWords(wording) && safety === null;
    return [
      {
        key,
        row,
        kind,
        language,
        filled,
        isOwnWording: template !== undefined,
        leftOutBecause: lacksNumber ? 'no-emergency-number' : whyLeftOut(context, row, kind, filled, asked.channel),
      },
    ];
  });
}

/** As the check shows it. */
export function toPreview(one: Composed, channel: Asked['channel']): OutputOf<'messages.check'>[number] {
  const { row } = one;
  return {
    key: one.key,
    kind: one.kind,
    name: row.partyName,
    language: one.language,
    to: channel === 'e-mail' ? row.email : addressLines(row).join(', '),
    aboutOn: row.dueOn,
    subject: one.filled.subject,
    body: one.filled.body,
    missing: [...one.filled.missing],
    leftOutBecause: one.leftOutBecause,
    awaitsNativeReader: awaitsNativeReader(one.language) && !one.isOwnWording,
  };
}

export function addressLines({ partyName, postalAddress: to }: ReminderRow): readonly string[] {
  const town = [to.postcode, to.city].filter(Boolean).join(' ');
  return [partyName, to.street ?? '', [town, to.region].filter(Boolean).join(', ')].filter((line) => line !== '');
}

function whyLeftOut(
  context: HandlerContext,
  row: ReminderRow,
  kind: MessageKind,
  filled: Filled,
  channel: Asked['channel'],
): LeftOutBecause | null {
  if (!row.channels.includes(channel)) return 'no-consent';
  if (channel === 'e-mail' && (row.email ?? '') === '') return 'no-email';
  if (channel === 'letter' && (row.postalAddress.street === null || row.postalAddress.city === null))
    return 'no-address';
  if (filled.missing.length > 0) return 'missing-fields';
  const same = { kind, applianceId: row.applianceId, aboutOn: row.dueOn, recallId: null };
  const before = lastPreparedAt(context.db, same);
  // An earlier stage of the cadence is another reminder.
  return before !== null && before.slice(0, 10) >= row.sendOn ? 'prepared-already' : null;
}

function standingRows(context: HandlerContext, wanted: ReadonlySet<string>): ReadonlyMap<string, ReminderRow> {
  const found = new Map<string, ReminderRow>();
  for (const kinds of [['service'], ['first-call', 'look-in']] as const) {
    let after: string | null = null;
    do {
      const page = readReminders(context, { kinds: [...kinds], onlyReachable: false, limit: PAGE, after });
      for (const row of page.rows) if (wanted.has(row.key)) found.set(row.key, row);
      after = page.next;
    } while (after !== null && found.size < wanted.size);
  }
  return found;
}
