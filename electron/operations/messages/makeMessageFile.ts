/** The file people send from: letters to print, drafts to open, texts to copy, or a table for mail merge. */
import { strToU8, zipSync } from 'fflate';
import { findCompany } from '../../../db/people.ts';
import { dayInLanguage } from '../../../domain/messages/dayInLanguage.ts';
import type { MessageKind } from '../../../domain/messages/messageKinds.ts';
import type { ParsedInputOf } from '../../contract/index.ts';
import { emailDraft } from '../../documents/messages/emailDraft.ts';
import { type Letter, lettersPdf } from '../../documents/messages/lettersPdf.ts';
import { mailMergeCsv } from '../../documents/messages/mailMergeCsv.ts';
import { fail, type HandlerContext, notFound } from '../handler.ts';
import type { MadeFile } from '../keepMade.ts';
import { dayIn } from '../today.ts';
import { addressLines, type Composed } from './composeMessages.ts';
import { toMergeRow } from './toMergeRow.ts';

export async function makeMessageFile(
  context: HandlerContext,
  input: ParsedInputOf<'messages.prepare'>,
  going: readonly Composed[],
): Promise<MadeFile> {
  const company = findCompany(context.db) ?? notFound('companies', 'this');
  const today = dayIn(company.timeZone, context.now);
  const kind = going[0]?.subject.kind ?? 'service-due';
  const named = (what: string) => `${FILE_WORDS[kind]}-${today}${what}`;
  if (input.form === 'mail-merge') {
    return { bytes: strToU8(mailMergeCsv(going.map(toMergeRow))), fileName: named('.csv'), mediaType: 'text/csv' };
  }
  if (input.channel === 'text') {
    const texts = going.map(
      ({ subject, filled }) => `${subject.partyName}\r\n${subject.phone}\r\n\r\n${filled.body}\r\n`,
    );
    return { bytes: strToU8(texts.join(TEXT_BREAK)), fileName: named('-texts.txt'), mediaType: 'text/plain' };
  }
  if (input.channel === 'e-mail') {
    const address = company.email ?? '';
    if (address === '') return fail('firm-email-missing', {});
    const drafts: Record<string, Uint8Array> = {};
    for (const [index, { subject, filled, language }] of going.entries()) {
      drafts[fileNameOf(index, subject.partyName, '.eml')] = await emailDraft({
        from: { name: company.name, address },
        to: { name: subject.partyName, address: subject.email ?? '' },
        subject: filled.subject,
        text: filled.body,
        language,
        madeAt: context.now,
        messageId: subject.key.replaceAll(/[^A-Za-z0-9-]/g, '.'),
      });
    }
    return zipped(drafts, named('-drafts.zip'), context.now);
  }
  const firm = {
    name: company.name,
    lines: [
      company.street,
      [company.postcode, company.city].filter(Boolean).join(' '),
      company.phone,
      company.email,
    ].flatMap((line) => (line === null || line === '' ? [] : [line])),
    country: company.country,
  };
  const letters = going.map(
    ({ subject, filled, language }): Letter => ({
      language,
      addressLines: addressLines(subject),
      dayText: dayInLanguage(today, language),
      ...filled,
    }),
  );
  if (input.form === 'one-file') {
    return {
      bytes: await lettersPdf(letters, firm, context.now),
      fileName: named('-letters.pdf'),
      mediaType: 'application/pdf',
    };
  }
  const files: Record<string, Uint8Array> = {};
  for (const [index, letter] of letters.entries()) {
    const name = fileNameOf(index, letter.addressLines[0] ?? '', '.pdf');
    files[name] = await lettersPdf([letter], firm, context.now);
  }
  return zipped(files, named('-letters.zip'), context.now);
}

function zipped(files: Readonly<Record<string, Uint8Array>>, fileName: string, madeAt: string): MadeFile {
  return { bytes: zipSync(files, { mtime: new Date(madeAt) }), fileName, mediaType: 'application/zip' };
}

/** The number keeps two people of one name apart, and the order of the list. */
function fileNameOf(index: number, name: string, ending: string): string {
  const safe = name
    .normalize('NFC')
    .replaceAll(/[^\p{L}\p{N} -]/gu, '')
    .trim();
  return `${String(index + 1).padStart(3, '0')} ${safe}${ending}`;
}

const TEXT_BREAK = '\r\n--------\r\n\r\n';

const FILE_WORDS: Readonly<Record<MessageKind, string>> = {
  'service-due': 'reminders',
  'first-year': 'reminders',
  appointment: 'visits-booked',
  'appointment-reminder': 'visits-soon',
  'on-the-way': 'on-the-way',
  recall: 'notice',
};
