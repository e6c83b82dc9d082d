/**
 * Puts values into a wording: `{{name}}`. What has no value is reported and nothing is written in its place: a letter with
 * a hole in it must not leave the house.
 */
export const MESSAGE_FIELDS = [
  'name',
  'appliance',
  'serial',
  'site',
  'dueOn',
  'latestOn',
  'visitOn',
  'visitWindow',
  'technician',
  'firmName',
  'firmPhone',
  'firmEmail',
  'emergencyNumber',
  'noticeTitle',
  'noticeSource',
  'noticeApplies',
  'whatToDo',
  'safetyWords',
] as const;
export type MessageField = (typeof MESSAGE_FIELDS)[number];
export type MessageValues = Readonly<Partial<Record<MessageField, string | null>>>;

export type Wording = { readonly subject: string; readonly body: string };

export type Filled = Wording & {
  /** Used by the wording, without a value. */
  readonly missing: readonly MessageField[];
};

const FIELD = /\{\{\s*([^{}]*?)\s*\}\}/gu;

export function fillTemplate(wording: Wording, values: MessageValues): Filled {
  const missing = new Set<MessageField>();
  const fill = (text: string): string =>
    text.replace(FIELD, (whole, name: string) => {
      if (!isMessageField(name)) return whole;
      const value = values[name] ?? null;
      if (value !== null && value.trim() !== '') return value;
      missing.add(name);
      return whole;
    });
  // A subject is one line whatever is put into it.
  const subject = fill(wording.subject).replaceAll(/\s+/gu, ' ').trim();
  return { subject, body: fill(wording.body), missing: [...missing] };
}

/** Names in braces that mean nothing: a wording with one cannot be kept. */
export function unknownFields({ subject, body }: Wording): readonly string[] {
  const names = [...`${subject}\n${body}`.matchAll(FIELD)].map((match) => match[1] ?? '');
  return [...new Set(names.filter((name) => !isMessageField(name)))];
}

export function isMessageField(name: string): name is MessageField {
  return (MESSAGE_FIELDS as readonly string[]).includes(name);
}
