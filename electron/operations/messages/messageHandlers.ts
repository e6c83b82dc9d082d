/** Messages as things people can send: looked at, made into files, and what came of each. */
import { countMessages, listMessageEvents, listMessages, listTemplates } from '../../../db/messages.ts';
import { findCompany } from '../../../db/people.ts';
import { messageEvents, messageTemplates } from '../../../db/schema/index.ts';
import { awaitsNativeReader, builtInWording } from '../../../domain/messages/builtInWordings.ts';
import { unknownFields } from '../../../domain/messages/fillTemplate.ts';
import {
  MESSAGE_KINDS,
  MESSAGE_LANGUAGES,
  type MessageLanguage,
  WRITTEN_CHANNELS,
} from '../../../domain/messages/messageKinds.ts';
import type { ParsedInputOf } from '../../contract/index.ts';
import { type DueEntry, dueCalendar } from '../../documents/messages/dueCalendar.ts';
import { actorOf, fail, type HandlerContext, type Handlers, notFound } from '../handler.ts';
import { keepMade } from '../keepMade.ts';
import { readReminders } from '../reminderRows.ts';
import { dayIn } from '../today.ts';
import { type Composed, composeMessages, toPreview } from './composeMessages.ts';
import { keepMessages } from './keepMessages.ts';
import { makeMessageFile } from './makeMessageFile.ts';
import { standingMessages } from './standingMessages.ts';

export const messageHandlers: Handlers<
  | 'messageTemplates.list'
  | 'messageTemplates.save'
  | 'messageTemplates.reset'
  | 'messages.standing'
  | 'messages.check'
  | 'messages.prepare'
  | 'messages.list'
  | 'messages.record'
  | 'dueCalendars.export'
> = {
  'messageTemplates.list': (_input, context) => {
    const own = listTemplates(context.db);
    return MESSAGE_KINDS.flatMap((kind) =>
      WRITTEN_CHANNELS.flatMap((channel) =>
        MESSAGE_LANGUAGES.map((language) => {
          const kept = own.find((one) => one.kind === kind && one.channel === channel && one.language === language);
          const { subject, body } = kept ?? builtInWording(kind, language, channel);
          const isOwn = kept !== undefined;
          return {
            kind,
            channel,
            language,
            subject,
            body,
            isOwn,
            awaitsNativeReader: !isOwn && awaitsNativeReader(language),
          };
        }),
      ),
    );
  },

  'messageTemplates.save': (input, context) => {
    const names = unknownFields(input);
    if (names.length > 0) return fail('unknown-fields', { names: [...names] });
    const by = { updatedById: actorOf(context).staffId, updatedAt: context.now };
    context.write((writer) => {
      const kept = findTemplate(context, input);
      if (kept === undefined) writer.insert(messageTemplates, { ...input, ...by });
      else writer.update(messageTemplates, kept.id, { subject: input.subject, body: input.body, ...by });
    });
    context.services.changed(['messages']);
    return {};
  },

  'messageTemplates.reset': (input, context) => {
    const kept = findTemplate(context, input);
    if (kept !== undefined) context.write((writer) => writer.remove(messageTemplates, kept.id));
    context.services.changed(['messages']);
    return {};
  },

  'messages.standing': (input, context) => standingMessages(context, input),

  'messages.check': (input, context) => composeMessages(context, input).map((one) => toPreview(one, input.channel)),

  'messages.prepare': async (input, context) => {
    const composed = composeMessages(context, input);
    const mayGo = ({ leftOutBecause }: Composed): boolean =>
      leftOutBecause === null || (leftOutBecause === 'prepared-already' && input.isKnownAgain);
    const going = composed.filter(mayGo);
    const leftOut = composed.filter((one) => !mayGo(one));
    if (going.length === 0) {
      const because = leftOut.flatMap((one) => one.leftOutBecause ?? []);
      return fail('nothing-to-prepare', { because: because.length > 0 ? because : ['stands-no-longer'] });
    }
    const file = await makeMessageFile(context, input, going);
    const attachmentId = keepMade(context, { ...file, subject: 'messages' }, (writer, keptId) => {
      const by = { preparedById: actorOf(context).staffId, preparedAt: context.now };
      keepMessages(writer, going, { channel: input.channel, attachmentId: keptId, ...by });
    });
    context.services.changed(['messages']);
    return {
      attachmentId,
      fileName: file.fileName,
      preparedCount: going.length,
      leftOut: leftOut.flatMap(({ subject, leftOutBecause }) =>
        leftOutBecause === null ? [] : [{ name: subject.partyName, because: leftOutBecause }],
      ),
    };
  },

  'messages.list': (input, context) => {
    const found = listMessages(context.db, { limit: input.limit + 1, after: input.after });
    const rows = found.slice(0, input.limit);
    const events = Map.groupBy(
      listMessageEvents(
        context.db,
        rows.map(({ message }) => message.id),
      ),
      ({ messageId }) => messageId,
    );
    return {
      rows: rows.map(({ message, name, preparedByName }) => ({
        messageId: message.id,
        kind: message.kind,
        channel: message.channel,
        language: message.language as MessageLanguage,
        partyId: message.partyId,
        name,
        applianceId: message.applianceId,
        aboutOn: message.aboutOn,
        subject: message.subject,
        preparedAt: message.preparedAt,
        preparedByName,
        attachmentId: message.attachmentId,
        events: (events.get(message.id) ?? []).map(({ kind, on, note }) => ({
          kind: kind as 'sent',
          on,
          note,
        })),
      })),
      next: found.length > input.limit ? (rows.at(-1)?.message.id ?? null) : null,
    };
  },

  'messages.record': (input, context) => {
    const { timeZone } = findCompany(context.db) ?? notFound('companies', 'this');
    if (input.on > dayIn(timeZone, context.now)) return fail('day-in-future', {});
    const ids = [...new Set(input.messageIds)];
    if (countMessages(context.db, ids) < ids.length) return notFound('messages', ids[0] ?? '');
    const byId = actorOf(context).staffId;
    context.write((writer) => {
      for (const messageId of ids) {
        writer.insert(messageEvents, {
          messageId,
          kind: input.kind,
          on: input.on,
          note: input.note,
          byId,
          at: context.now,
        });
      }
    });
    context.services.changed(['messages']);
    return {};
  },

  'dueCalendars.export': (_input, context) => {
    const company = findCompany(context.db) ?? notFound('companies', 'this');
    const entries: DueEntry[] = [];
    let after: string | null = null;
    do {
      const page = readReminders(context, { kinds: ['service'], onlyReachable: false, limit: 200, after });
      for (const row of page.rows) {
        entries.push({
          key: `${row.applianceId} ${row.kind} ${row.dueOn}`,
          on: row.dueOn,
          summary: `Service due: ${row.partyName}, ${row.maker} ${row.model}`,
          location: [row.street, row.city].filter(Boolean).join(', '),
          description: `Serial ${row.serial}. Latest day ${row.latestOn}.${row.phone === null ? '' : ` Phone ${row.phone}.`}`,
        });
      }
      after = page.next;
    } while (after !== null);
    return {
      fileName: `services-due-${context.now.slice(0, 10)}.ics`,
      text: dueCalendar(`${company.name}: services due`, entries, context.now),
      count: entries.length,
    };
  },
};

function findTemplate(
  context: HandlerContext,
  { kind, channel, language }: Pick<ParsedInputOf<'messageTemplates.reset'>, 'kind' | 'channel' | 'language'>,
) {
  return listTemplates(context.db).find(
    (one) => one.kind === kind && one.channel === channel && one.language === language,
  );
}
