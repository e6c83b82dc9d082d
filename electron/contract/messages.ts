/** Messages as letters, e-mail drafts, texts and lists: looked at first, then prepared, and what came of each. Nothing is sent from here. */
import { z } from 'zod';
import { MESSAGE_FIELDS } from '../../domain/messages/fillTemplate.ts';
import { MESSAGE_KINDS, MESSAGE_LANGUAGES, WRITTEN_CHANNELS } from '../../domain/messages/messageKinds.ts';
import { day, id, instant, nothing, operation, words } from './operation.ts';

const kind = z.enum(MESSAGE_KINDS);
const language = z.enum(MESSAGE_LANGUAGES);
export const messageChannel = z.enum(WRITTEN_CHANNELS);

const askedFor = {
  /** Messages that stand today, by their keys (`messages.standing`, `reminders.list`). */
  keys: z.array(z.string().max(120)).min(1).max(500),
  channel: messageChannel,
  /** null: each person's own, else the firm's. */
  language: language.nullable().default(null),
};

/** Why somebody is left out. */
export const LEFT_OUT = [
  'missing-fields',
  'no-address',
  'no-email',
  'no-phone',
  'no-consent',
  'no-emergency-number',
  'prepared-already',
  'stands-no-longer',
] as const;

const preview = z.strictObject({
  key: z.string(),
  kind,
  name: z.string(),
  language,
  to: z.string().nullable(),
  aboutOn: day.nullable(),
  subject: z.string(),
  body: z.string(),
  missing: z.array(z.enum(MESSAGE_FIELDS)),
  leftOutBecause: z.enum(LEFT_OUT).nullable(),
  awaitsNativeReader: z.boolean(),
});
export type MessagePreview = z.output<typeof preview>;

const wording = { subject: z.string().trim().min(1).max(200), body: z.string().trim().min(1).max(8000) };

export const messageOperations = {
  'messageTemplates.list': operation({
    access: 'signed-in',
    input: nothing,
    output: z.array(
      z.strictObject({
        kind,
        channel: messageChannel,
        language,
        subject: z.string(),
        body: z.string(),
        isOwn: z.boolean(),
        awaitsNativeReader: z.boolean(),
      }),
    ),
  }),
  'messageTemplates.save': operation({
    access: ['owner', 'dispatcher'],
    input: z.strictObject({ kind, channel: messageChannel, language, ...wording }),
    output: nothing,
    errors: { 'unknown-fields': z.strictObject({ names: z.array(z.string()) }) },
  }),
  /** Back to the wording that comes with the program. */
  'messageTemplates.reset': operation({
    access: ['owner', 'dispatcher'],
    input: z.strictObject({ kind, channel: messageChannel, language }),
    output: nothing,
  }),
  /** What could be written today, by key: what was not prepared yet first. */
  'messages.standing': operation({
    access: 'signed-in',
    input: z.strictObject({
      about: z.discriminatedUnion('kind', [
        z.strictObject({ kind: z.literal('reminders') }),
        z.strictObject({
          kind: z.literal('appointments'),
          which: z.enum(['appointment', 'appointment-reminder', 'on-the-way']),
        }),
        z.strictObject({ kind: z.literal('recall'), recallId: id }),
      ]),
      channel: messageChannel,
      limit: z.number().int().min(1).max(500).default(200),
    }),
    output: z.strictObject({
      keys: z.array(z.string()),
      total: z.number().int(),
      preparedCount: z.number().int(),
    }),
  }),
  /** Every message as it would read, and what is missing. Writes nothing. */
  'messages.check': operation({
    access: 'signed-in',
    input: z.strictObject(askedFor),
    output: z.array(preview),
  }),
  /** Makes the files and notes each message; whoever cannot be written to is left out and named. */
  'messages.prepare': operation({
    access: ['owner', 'dispatcher'],
    input: z.strictObject({
      ...askedFor,
      form: z.enum(['one-file', 'one-each', 'mail-merge']),
      /** Once more, although it was prepared already. */
      isKnownAgain: z.boolean().default(false),
    }),
    output: z.strictObject({
      attachmentId: id,
      fileName: z.string(),
      preparedCount: z.number().int(),
      leftOut: z.array(z.strictObject({ name: z.string(), because: z.enum(LEFT_OUT) })),
    }),
    errors: {
      'nothing-to-prepare': z.strictObject({ because: z.array(z.enum(LEFT_OUT)) }),
      /** Drafts need a sender. */
      'firm-email-missing': nothing,
    },
  }),
  /** Due days of the reminders that stand, for any calendar. */
  'dueCalendars.export': operation({
    access: 'signed-in',
    input: nothing,
    output: z.strictObject({ fileName: z.string(), text: z.string(), count: z.number().int() }),
  }),
  'messages.list': operation({
    access: 'signed-in',
    input: z.strictObject({ limit: z.number().int().min(1).max(200).default(50), after: id.nullable().default(null) }),
    output: z.strictObject({
      rows: z.array(
        z.strictObject({
          messageId: id,
          kind: z.string(),
          channel: z.string(),
          language,
          partyId: id,
          name: z.string(),
          applianceId: id.nullable(),
          aboutOn: day.nullable(),
          subject: z.string(),
          preparedAt: instant,
          preparedByName: z.string(),
          attachmentId: id.nullable(),
          events: z.array(
            z.strictObject({ kind: z.enum(['sent', 'bounced', 'answered', 'withdrawn']), on: day, note: words }),
          ),
        }),
      ),
      next: id.nullable(),
    }),
  }),
  'messages.record': operation({
    access: ['owner', 'dispatcher'],
    input: z.strictObject({
      messageIds: z.array(id).min(1).max(500),
      kind: z.enum(['sent', 'bounced', 'answered', 'withdrawn']),
      on: day,
      note: words,
    }),
    output: nothing,
    errors: { 'day-in-future': nothing },
  }),
} as const;
