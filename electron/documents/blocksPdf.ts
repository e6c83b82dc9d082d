/** Any document made of blocks as a tagged PDF/A-3a with one plain frame; the same input gives the same bytes. */
import PDFDocument from 'pdfkit';
import { COLOURS } from './documentColours.ts';
import { documentFont, FONT_NAMES } from './documentFonts.ts';
import { drawableText } from './drawableText.ts';
import type { Block } from './page/blocks.ts';
import { drawPages } from './page/drawPages.ts';
import { layoutPages, type PageFrame } from './page/layoutPages.ts';
import { A4, type DrawOp, type Paper, US_LETTER } from './page/pageModel.ts';
import { SMALL, type TextStyle, textLine } from './page/textStyle.ts';
import { collectPdf, metadataText } from './pdfFile.ts';
import { textWidth, wrapText } from './textMeasure.ts';

export type BlocksDocument = {
  readonly blocks: readonly Block[];
  readonly images: ReadonlyMap<string, Uint8Array>;
  readonly title: string;
  readonly author: string;
  readonly language: 'en' | 'fr' | 'es';
  /** ISO country of the firm: it decides the paper. */
  readonly country: string;
  readonly madeAt: string;
  /** On every page, left of the page number; null: no page numbers either, as in a letter. */
  readonly footer: string | null;
};

/** Where office paper is US Letter rather than A4 (from memory of common use). */
const LETTER_COUNTRIES = new Set(['US', 'CA', 'MX', 'PH', 'CL']);
const SIDE = 54;

export async function blocksPdf(document: BlocksDocument): Promise<Uint8Array> {
  const pdf = new PDFDocument({
    autoFirstPage: false,
    bufferPages: false,
    compress: true,
    displayTitle: true,
    font: '',
    info: {
      Title: metadataText(document.title),
      Author: metadataText(document.author),
      Creator: 'Lightoff',
      Producer: 'Lightoff',
      CreationDate: new Date(document.madeAt),
    },
    lang: document.language,
    pdfVersion: '1.7',
    subset: 'PDF/A-3a',
    tagged: true,
  });
  const bytes = collectPdf(pdf);
  for (const name of FONT_NAMES) pdf.registerFont(name, documentFont(name));
  drawPages(pdf, layoutPages(document.blocks, frameOf(document)), document.images);
  pdf.end();
  return bytes;
}

export function paperOf(country: string): Paper {
  return LETTER_COUNTRIES.has(country) ? US_LETTER : A4;
}

function frameOf({ country, footer }: BlocksDocument): PageFrame {
  const paper = paperOf(country);
  const style: TextStyle = { ...SMALL, colour: COLOURS.muted };
  return {
    paper,
    left: SIDE,
    right: SIDE,
    top: 56,
    bottom: 54,
    chrome: (page, pageCount): readonly DrawOp[] => {
      if (footer === null) return [];
      const top = paper.height - 36;
      const number = `${page} / ${pageCount}`;
      const [line = ''] = wrapText(drawableText(footer), style.font, style.size, paper.width - 2 * SIDE - 60);
      return [
        textLine(line, SIDE, top, style),
        textLine(number, paper.width - SIDE - textWidth(number, style.font, style.size), top, style),
      ];
    },
  };
}
