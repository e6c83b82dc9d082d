/** Draws finished pages with pdfkit. Nothing is decided here: every place, letter and colour is in the page model. */
import type PDFDocument from 'pdfkit';
import { assertNever } from '../../../domain/result.ts';
import type { DrawOp, PageModel, PlacedOp } from './pageModel.ts';

export type DrawableImages = ReadonlyMap<string, Uint8Array>;
type Pdf = InstanceType<typeof PDFDocument>;
type Element = PDFKit.PDFStructureElement;

export function drawPages(pdf: Pdf, model: PageModel, images: DrawableImages): void {
  const elements: Element[] = [];
  const painter = makePainter(pdf, images);
  for (const page of model.pages) {
    pdf.addPage({ size: [model.width, model.height], margin: 0 });
    painter.startPage();
    for (const group of groups(page.body)) {
      if (group.node === null) drawArtifact(pdf, group.ops, 'Layout', painter.draw);
      else {
        elementAt(pdf, model, elements, group.node).add(() => {
          for (const op of group.ops) painter.draw(op);
        });
      }
    }
    drawArtifact(pdf, page.chrome, 'Pagination', painter.draw);
  }
  elementAt(pdf, model, elements, model.nodes.length - 1);
  elements[0]?.end();
}

function drawArtifact(
  pdf: Pdf,
  ops: readonly DrawOp[],
  type: 'Layout' | 'Pagination',
  draw: (op: DrawOp) => void,
): void {
  if (ops.length === 0) return;
  pdf.markContent('Artifact', { type });
  for (const op of ops) draw(op);
  pdf.endMarkedContent();
}

/** Neighbours of the same node share one piece of marked content. */
function groups(placed: readonly PlacedOp[]): { readonly node: number | null; readonly ops: DrawOp[] }[] {
  const grouped: { readonly node: number | null; readonly ops: DrawOp[] }[] = [];
  for (const { op, node } of placed) {
    const last = grouped.at(-1);
    if (last && last.node === node) last.ops.push(op);
    else grouped.push({ node, ops: [op] });
  }
  return grouped;
}

/** Nodes stand in document order, parents first: all up to the wanted one are made, so that empty cells are there too. */
function elementAt(pdf: Pdf, model: PageModel, elements: Element[], index: number): Element {
  for (let at = elements.length; at <= index; at += 1) {
    const node = model.nodes[at];
    if (!node) throw new Error(`the page model has no node ${at}`);
    const element = pdf.struct(node.role, {
      ...(node.alt === undefined ? {} : { alt: node.alt }),
      ...(node.bbox === undefined ? {} : { bbox: [...node.bbox] as [number, number, number, number] }),
      ...(node.scope === undefined ? {} : { scope: node.scope }),
    });
    const parent = node.parent === null ? undefined : elements[node.parent];
    if (parent) parent.add(element);
    else pdf.addStructure(element);
    elements.push(element);
  }
  const element = elements[index];
  if (!element) throw new Error(`the page model has no node ${index}`);
  return element;
}

function makePainter(pdf: Pdf, images: DrawableImages) {
  let fill: string | null = null;
  const opened = new Map<string, PDFKit.Mixins.OpenedImage>();
  const openedImage = (sha256: string): PDFKit.Mixins.OpenedImage => {
    const known = opened.get(sha256);
    if (known) return known;
    const bytes = images.get(sha256);
    if (!bytes) throw new Error(`no image bytes for ${sha256}`);
    const image = pdf.openImage(Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength));
    opened.set(sha256, image);
    return image;
  };
  const draw = (op: DrawOp): void => {
    switch (op.kind) {
      case 'text':
        if (fill !== op.colour) pdf.fillColor(op.colour);
        fill = op.colour;
        pdf.font(op.font).fontSize(op.size);
        pdf.text(op.text, op.x, op.baseline, { lineBreak: false, baseline: 'alphabetic' });
        return;
      case 'line':
        pdf.lineWidth(op.width).strokeColor(op.colour);
        if (op.dash !== undefined) pdf.dash(op.dash, { space: op.dash });
        pdf
          .moveTo(...op.from)
          .lineTo(...op.to)
          .stroke();
        if (op.dash !== undefined) pdf.undash();
        return;
      case 'path':
        fill = null;
        pdf.lineWidth(op.width).path(op.path);
        if (op.fill !== null && op.stroke !== null) pdf.fillAndStroke(op.fill, op.stroke);
        else if (op.fill !== null) pdf.fill(op.fill);
        else if (op.stroke !== null) pdf.stroke(op.stroke);
        return;
      case 'image':
        pdf.image(openedImage(op.sha256), op.x, op.y, { width: op.width, height: op.height });
        return;
      default:
        assertNever(op);
    }
  };
  return {
    draw,
    startPage: () => {
      fill = null;
    },
  };
}
