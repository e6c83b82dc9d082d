/** What messages, their languages and their fates are called on screen. */
import type { MessageKind, MessageLanguage, WrittenChannel } from '../../domain/messages/messageKinds.ts';
import type { LEFT_OUT } from '../../electron/contract/messages.ts';

export const MESSAGE_KIND_WORDS: Record<MessageKind, string> = {
  'service-due': 'service due',
  'first-year': 'first year: how is it doing',
  appointment: 'visit booked',
  'appointment-reminder': 'visit soon',
  'on-the-way': 'on the way',
  recall: 'safety notice',
};

export const LANGUAGE_WORDS: Record<MessageLanguage, string> = { en: 'English', fr: 'French', es: 'Spanish' };

export const CHANNEL_WORDS: Readonly<Record<WrittenChannel, string>> = {
  letter: 'letter',
  'e-mail': 'e-mail',
  text: 'text message',
};

export const FATE_WORDS = { sent: 'sent', bounced: 'came back', answered: 'answered', withdrawn: 'withdrawn' } as const;

export const LEFT_OUT_WORDS: Record<(typeof LEFT_OUT)[number], string> = {
  'missing-fields': 'something it says is missing',
  'no-address': 'no postal address on file',
  'no-email': 'no e-mail address on file',
  'no-phone': 'no phone number on file',
  'no-consent': 'has not agreed to this way',
  'no-emergency-number': 'it gives safety advice, and no emergency number is on file',
  'prepared-already': 'prepared already',
  'stands-no-longer': 'it stands no longer',
};
