/**
 * A packet against drawing the very same letters, lines and pictures with pdfkit alone: what layout, tags, the record
 * inside and its hashes cost on top. Both use fonts that were read once. Processor time, not wall time: the machine is shared.
 */
import PDFDocument from 'pdfkit';
import { FONT_NAMES, readFont } from '../../electron/documents/documentFonts.ts';
import { type PacketPages, packetPages, packetPdf } from '../../electron/documents/packet/packetPdf.ts';
import type { DrawOp } from '../../electron/documents/page/pageModel.ts';
import { samplePacket } from '../support/packetSample.ts';
import type { BenchResult } from './benchResult.ts';

const GOAL = 3;
const WARM_UP = 3;
const RUNS = 9;

export async function benchPacket(): Promise<readonly BenchResult[]> {
  const input = samplePacket();
  const pages = packetPages(input);
  const fonts = FONT_NAMES.map((name) => [name, readFont(name)] as const);
  const ours: number[] = [];
  const raw: number[] = [];
  // Taken in turns, so that a busy moment of the machine falls on both.
  for (let run = 0; run < WARM_UP + RUNS; run += 1) {
    const one = await cpuMs(() => packetPdf(input));
    const other = await cpuMs(() => drawRaw(pages, fonts));
    if (run < WARM_UP) continue;
    ours.push(one);
    raw.push(other);
  }
  const name = `packet of ${pages.model.pages.length} pages, against pdfkit alone (processor time)`;
  return [{ name, ms: median(ours), rawMs: median(raw), goal: GOAL }];
}

async function cpuMs(work: () => Promise<unknown>): Promise<number> {
  const from = process.cpuUsage();
  await work();
  const { user, system } = process.cpuUsage(from);
  return (user + system) / 1000;
}

function median(values: readonly number[]): number {
  return values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;
}

function drawRaw(
  { model, images }: PacketPages,
  fonts: readonly (readonly [string, ReturnType<typeof readFont>])[],
): Promise<number> {
  const pdf = new PDFDocument({ autoFirstPage: false, font: '', pdfVersion: '1.7' });
  const done = new Promise<number>((resolve, reject) => {
    let length = 0;
    pdf.on('data', (chunk: Uint8Array) => {
      length += chunk.length;
    });
    pdf.on('end', () => resolve(length));
    pdf.on('error', reject);
  });
  for (const [name, font] of fonts) pdf.registerFont(name, font);
  for (const page of model.pages) {
    pdf.addPage({ size: [model.width, model.height], margin: 0 });
    for (const { op } of page.body) draw(pdf, op, images);
    for (const op of page.chrome) draw(pdf, op, images);
  }
  pdf.end();
  return done;
}

function draw(pdf: InstanceType<typeof PDFDocument>, op: DrawOp, images: ReadonlyMap<string, Uint8Array>): void {
  if (op.kind === 'text') {
    pdf.fillColor(op.colour).font(op.font).fontSize(op.size);
    pdf.text(op.text, op.x, op.baseline, { lineBreak: false, baseline: 'alphabetic' });
  } else if (op.kind === 'line') {
    pdf.lineWidth(op.width).strokeColor(op.colour);
    if (op.dash !== undefined) pdf.dash(op.dash, { space: op.dash });
    pdf
      .moveTo(...op.from)
      .lineTo(...op.to)
      .stroke();
    if (op.dash !== undefined) pdf.undash();
  } else if (op.kind === 'path') {
    pdf.lineWidth(op.width).path(op.path);
    if (op.fill !== null && op.stroke !== null) pdf.fillAndStroke(op.fill, op.stroke);
    else if (op.fill !== null) pdf.fill(op.fill);
    else pdf.stroke(op.stroke ?? undefined);
  } else {
    const bytes = images.get(op.sha256);
    if (bytes) pdf.image(Buffer.from(bytes), op.x, op.y, { width: op.width, height: op.height });
  }
}
