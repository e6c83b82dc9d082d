/** Letters for the post, one to a page or more: sender, address where a window envelope shows it, day, subject, text. */
import { blocksPdf } from '../blocksPdf.ts';
import { drawableText } from '../drawableText.ts';
import type { Block } from '../page/blocks.ts';

export type Letter = {
  readonly language: 'en' | 'fr' | 'es';
  readonly addressLines: readonly string[];
  /** In the letter's own language. */
  readonly dayText: string;
  readonly subject: string;
  readonly body: string;
};

export type LetterFirm = {
  readonly name: string;
  readonly lines: readonly string[];
  readonly country: string;
};

export function lettersPdf(letters: readonly Letter[], firm: LetterFirm, madeAt: string): Promise<Uint8Array> {
  return blocksPdf({
    blocks: letters.flatMap((letter, index) => [
      ...(index === 0 ? [] : [{ kind: 'page-break' } as const]),
      ...letterBlocks(letter, firm),
    ]),
    images: new Map(),
    title: letters.length === 1 ? (letters[0]?.subject ?? firm.name) : firm.name,
    author: firm.name,
    language: letters[0]?.language ?? 'en',
    country: firm.country,
    madeAt,
    footer: null,
  });
}

function letterBlocks(letter: Letter, firm: LetterFirm): readonly Block[] {
  return [
    { kind: 'paragraph', text: firm.name, tone: 'strong' },
    { kind: 'paragraph', text: firm.lines.join(' · '), tone: 'muted' },
    { kind: 'paragraph', text: `\n${letter.addressLines.map(oneLine).join('\n')}\n\n` },
    { kind: 'paragraph', text: `${letter.dayText}\n` },
    { kind: 'heading', level: 1, text: letter.subject },
    ...letter.body.split(/\n{2,}/u).map((text): Block => ({ kind: 'paragraph', text: drawableText(text) })),
  ];
}

function oneLine(text: string): string {
  return text.replaceAll(/\s+/gu, ' ').trim();
}
