/** What messages are about, in which languages and by which channels they are written. */
export const MESSAGE_KINDS = [
  'service-due',
  'first-year',
  'appointment',
  'appointment-reminder',
  'on-the-way',
  'recall',
] as const;
export type MessageKind = (typeof MESSAGE_KINDS)[number];

export const MESSAGE_LANGUAGES = ['en', 'fr', 'es'] as const;
export type MessageLanguage = (typeof MESSAGE_LANGUAGES)[number];

export const WRITTEN_CHANNELS = ['letter', 'e-mail', 'text'] as const;
export type WrittenChannel = (typeof WRITTEN_CHANNELS)[number];
