/** What every PDF made here needs: its bytes in one piece, and texts that its metadata can carry. */
import type PDFDocument from 'pdfkit';
import { drawableText } from './drawableText.ts';

export function collectPdf(pdf: InstanceType<typeof PDFDocument>): Promise<Uint8Array> {
  return new Promise((resolve, reject) => {
    const chunks: Uint8Array[] = [];
    pdf.on('data', (chunk: Uint8Array) => chunks.push(chunk));
    pdf.on('end', () => resolve(new Uint8Array(Buffer.concat(chunks))));
    pdf.on('error', reject);
  });
}

/** These texts go into XML unescaped: what XML reads as its own is left out. */
export function metadataText(text: string): string {
  return drawableText(text).replace(/[<>&\n]+/gu, ' ');
}
