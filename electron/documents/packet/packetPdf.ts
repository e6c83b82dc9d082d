/** A packet as PDF/A-3a: tagged pages with the sealed record inside. The same input gives the same bytes. */
import PDFDocument from 'pdfkit';
import { canonicalJson } from '../../sealing/canonicalJson.ts';
import { documentFont, FONT_NAMES } from '../documentFonts.ts';
import { drawPages } from '../page/drawPages.ts';
import { layoutPages } from '../page/layoutPages.ts';
import type { PageModel } from '../page/pageModel.ts';
import { collectPdf, metadataText } from '../pdfFile.ts';
import { disclosuresJson } from './disclosuresJson.ts';
import { DIGEST_KEY, DIGEST_PLACEHOLDER, stampFileDigest } from './fileDigest.ts';
import { packetBlocks } from './packetBlocks.ts';
import { packetFrame } from './packetFrame.ts';
import type { PacketInput } from './packetInput.ts';
import { type PacketView, packetView } from './packetView.ts';
import { KIND_WORDS } from './packetWords.ts';
import { type PagePhoto, photoForPdf } from './photoForPdf.ts';

export type PacketPages = {
  readonly view: PacketView;
  readonly model: PageModel;
  readonly images: ReadonlyMap<string, Uint8Array>;
};

/** Everything but the drawing: where each letter stands. */
export function packetPages(input: PacketInput): PacketPages {
  const view = packetView(input);
  const photos = new Map<string, PagePhoto>(input.photos.map((photo) => [photo.sha256, photoForPdf(photo.bytes)]));
  const images = new Map<string, Uint8Array>();
  for (const [sha256, photo] of photos) if (photo.kind === 'drawable') images.set(sha256, photo.bytes);
  return { view, model: layoutPages(packetBlocks(view, photos), packetFrame(view)), images };
}

export async function packetPdf(input: PacketInput): Promise<Uint8Array> {
  const { view, model, images } = packetPages(input);
  const madeAt = new Date(view.sealedAt ?? input.madeAt);
  const pdf = new PDFDocument({
    autoFirstPage: false,
    bufferPages: false,
    compress: true,
    displayTitle: true,
    // No default font: only the fonts used are in the file, and all of them embedded.
    font: '',
    info: documentInfo(view, madeAt),
    lang: view.record.language,
    pdfVersion: '1.7',
    subset: 'PDF/A-3a',
    tagged: true,
  });
  const bytes = collectPdf(pdf);
  for (const name of FONT_NAMES) pdf.registerFont(name, documentFont(name));
  attach(pdf, 'record.json', canonicalJson(input.record), 'Source', madeAt, 'The record these pages were made from');
  attach(
    pdf,
    'disclosures.json',
    disclosuresJson(view.sha256, input.disclosures),
    'Supplement',
    madeAt,
    'The personal values behind the record’s commitments',
  );
  drawPages(pdf, model, images);
  pdf.end();
  return stampFileDigest(await bytes);
}

function documentInfo(view: PacketView, madeAt: Date): PDFKit.DocumentInfo {
  const { appliance, company } = view.record;
  return {
    Title: metadataText(
      `${KIND_WORDS[view.record.job.kind]}, ${appliance.maker} ${appliance.model}, serial ${appliance.serial}`,
    ),
    Author: metadataText(company.name),
    Creator: 'Lightoff',
    Producer: 'Lightoff',
    CreationDate: madeAt,
    [DIGEST_KEY]: DIGEST_PLACEHOLDER,
  };
}

function attach(
  pdf: InstanceType<typeof PDFDocument>,
  name: string,
  text: string,
  relationship: 'Source' | 'Supplement',
  at: Date,
  description: string,
): void {
  pdf.file(Buffer.from(text, 'utf8'), {
    name,
    type: 'application/json',
    description,
    creationDate: at,
    modifiedDate: at,
    relationship,
  });
}
