/** Each message as it would read to its person, in their language, and why it can't go out where it can't. */
import { lastPreparedAt, listTemplates } from '../../../db/messages.ts';
import { findCompany } from '../../../db/people.ts';
import {
  awaitsNativeReader,
  builtInWording,
  carriesSafetyWords,
  safetyWords,
} from '../../../domain/messages/builtInWordings.ts';
import { type Filled, fillTemplate, type MessageValues, type Wording } from '../../../domain/messages/fillTemplate.ts';
import type { MessageLanguage, WrittenChannel } from '../../../domain/messages/messageKinds.ts';
import type { OutputOf, ParsedInputOf } from '../../contract/index.ts';
import type { LEFT_OUT } from '../../contract/messages.ts';
import { notFound, type ReadContext } from '../handler.ts';
import { appointmentSubjects } from './appointmentSubjects.ts';
import type { MessageSubject } from './messageSubject.ts';
import { recallSubjects } from './recallSubjects.ts';
import { reminderSubjects } from './reminderSubjects.ts';

type Asked = Pick<ParsedInputOf<'messages.check'>, 'keys' | 'channel' | 'language'>;
export type LeftOutBecause = (typeof LEFT_OUT)[number];

export type Composed = {
  readonly subject: MessageSubject;
  readonly language: MessageLanguage;
  readonly filled: Filled;
  readonly isOwnWording: boolean;
  readonly leftOutBecause: LeftOutBecause | null;
};

/** In the order asked for; a key that stands no longer is left away and named by the caller. */
export function composeMessages(context: ReadContext, asked: Asked): readonly Composed[] {
  const company = findCompany(context.db) ?? notFound('companies', 'this');
  const own = listTemplates(context.db);
  const subjects = subjectsOf(context, asked.keys);
  return asked.keys.flatMap((key): Composed[] => {
    const subject = subjects.get(key);
    if (subject === undefined) return [];
    const { kind } = subject;
    const language = asked.language ?? subject.language ?? (company.language as MessageLanguage);
    const template = own.find((one) => one.kind === kind && one.channel === asked.channel && one.language === language);
    const wording: Wording = template ?? builtInWording(kind, language, asked.channel);
    const safety = safetyWords(company.emergencyNumber, language);
    const values: MessageValues = {
      name: subject.partyName,
      appliance: subject.applianceName,
      serial: subject.serial,
      site: subject.site,
      firmName: company.name,
      firmPhone: company.phone,
      firmEmail: company.email,
      emergencyNumber: company.emergencyNumber,
      safetyWords: safety,
      ...subject.valuesIn(language),
    };
    const filled = fillTemplate(wording, values);
    const lacksNumber = carriesSafetyWords(wording) && safety === null;
    return [
      {
        subject,
        language,
        filled,
        isOwnWording: template !== undefined,
        leftOutBecause: lacksNumber ? 'no-emergency-number' : whyLeftOut(context, subject, filled, asked.channel),
      },
    ];
  });
}

/** As the check shows it. */
export function toPreview(one: Composed, channel: WrittenChannel): OutputOf<'messages.check'>[number] {
  const { subject } = one;
  return {
    key: subject.key,
    kind: subject.kind,
    name: subject.partyName,
    language: one.language,
    to: addressed(subject, channel),
    aboutOn: subject.aboutOn,
    subject: one.filled.subject,
    body: one.filled.body,
    missing: [...one.filled.missing],
    leftOutBecause: one.leftOutBecause,
    awaitsNativeReader: awaitsNativeReader(one.language) && !one.isOwnWording,
  };
}

export function addressLines({ partyName, postalAddress: to }: MessageSubject): readonly string[] {
  const town = [to.postcode, to.city].filter(Boolean).join(' ');
  return [partyName, to.street ?? '', [town, to.region].filter(Boolean).join(', ')].filter((line) => line !== '');
}

export function isPrepared(context: ReadContext, subject: MessageSubject): boolean {
  const before = lastPreparedAt(context.db, subject);
  // An earlier stage of the cadence is another message.
  return before !== null && (subject.sendOn === null || before.slice(0, 10) >= subject.sendOn);
}

function addressed(subject: MessageSubject, channel: WrittenChannel): string | null {
  switch (channel) {
    case 'letter':
      return addressLines(subject).join(', ');
    case 'e-mail':
      return subject.email;
    case 'text':
      return subject.phone;
  }
}

function whyLeftOut(
  context: ReadContext,
  subject: MessageSubject,
  filled: Filled,
  channel: WrittenChannel,
): LeftOutBecause | null {
  if (!subject.mayUse(channel)) return 'no-consent';
  if (channel === 'e-mail' && (subject.email ?? '') === '') return 'no-email';
  if (channel === 'text' && (subject.phone ?? '') === '') return 'no-phone';
  if (channel === 'letter' && (subject.postalAddress.street === null || subject.postalAddress.city === null))
    return 'no-address';
  if (filled.missing.length > 0) return 'missing-fields';
  return isPrepared(context, subject) ? 'prepared-already' : null;
}

function subjectsOf(context: ReadContext, keys: readonly string[]): ReadonlyMap<string, MessageSubject> {
  const bySource = Map.groupBy(keys, (key) => (SOURCES.has(key.split(' ')[0] ?? '') ? key.split(' ')[0] : 'reminder'));
  return new Map(
    [...bySource]
      .flatMap(([source, ofSource]) => (SOURCES.get(source ?? '') ?? reminderSubjects)(context, ofSource))
      .map((subject) => [subject.key, subject]),
  );
}

/** By the first word of a key; a reminder's begins with its appliance. */
const SOURCES: ReadonlyMap<string, typeof reminderSubjects> = new Map([
  ['visit', appointmentSubjects],
  ['recall', recallSubjects],
]);
