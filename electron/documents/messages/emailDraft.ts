/** An e-mail as a draft file (RFC 5322): opened in the office's own mail program, looked at and sent from there. */
import MailComposer from 'nodemailer/lib/mail-composer';

export type EmailDraft = {
  readonly from: { readonly name: string; readonly address: string };
  readonly to: { readonly name: string; readonly address: string };
  readonly subject: string;
  readonly text: string;
  readonly language: 'en' | 'fr' | 'es';
  readonly madeAt: string;
  /** Ours: the same draft keeps it. */
  readonly messageId: string;
};

export function emailDraft(draft: EmailDraft): Promise<Uint8Array> {
  const domain = draft.from.address.split('@').at(-1) ?? 'localhost';
  const composer = new MailComposer({
    from: draft.from,
    to: draft.to,
    subject: draft.subject,
    text: draft.text,
    date: new Date(draft.madeAt),
    messageId: `<${draft.messageId}@${domain}>`,
    headers: { 'Content-Language': draft.language, 'X-Unsent': '1' },
    disableFileAccess: true,
    disableUrlAccess: true,
    newline: '\r\n',
  });
  return new Promise((resolve, reject) => {
    composer.compile().build((error, message) => (error ? reject(error) : resolve(new Uint8Array(message))));
  });
}
