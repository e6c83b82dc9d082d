/** Finished pages as data: what stands where, in points from the top left, and which part of the document's structure it is. */
import type { Colour } from '../documentColours.ts';
import type { FontName } from '../documentFonts.ts';

export type TextOp = {
  readonly kind: 'text';
  readonly x: number;
  readonly baseline: number;
  readonly text: string;
  readonly font: FontName;
  readonly size: number;
  readonly colour: Colour;
};
export type LineOp = {
  readonly kind: 'line';
  readonly from: readonly [x: number, y: number];
  readonly to: readonly [x: number, y: number];
  readonly width: number;
  readonly colour: Colour;
  readonly dash?: number;
};
export type PathOp = {
  readonly kind: 'path';
  /** SVG path data. */
  readonly path: string;
  readonly fill: Colour | null;
  readonly stroke: Colour | null;
  readonly width: number;
};
export type ImageOp = {
  readonly kind: 'image';
  readonly sha256: string;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
};
export type DrawOp = TextOp | LineOp | PathOp | ImageOp;

/** Structure types of PDF (ISO 32000-1, 14.8.4). */
export type NodeRole =
  | 'Document'
  | 'Sect'
  | 'H1'
  | 'H2'
  | 'H3'
  | 'P'
  | 'Table'
  | 'TR'
  | 'TH'
  | 'TD'
  | 'Figure'
  | 'L'
  | 'LI'
  | 'LBody';

export type PageNode = {
  readonly role: NodeRole;
  /** Index of the parent; null for the root. */
  readonly parent: number | null;
  readonly alt?: string;
  readonly bbox?: readonly [number, number, number, number];
  readonly scope?: 'Column' | 'Row';
};

/** `node` null: decoration, which a reading aid passes over. */
export type PlacedOp = { readonly op: DrawOp; readonly node: number | null };

export type PageModel = {
  readonly width: number;
  readonly height: number;
  readonly nodes: readonly PageNode[];
  readonly pages: readonly { readonly body: readonly PlacedOp[]; readonly chrome: readonly DrawOp[] }[];
};

export type Paper = { readonly width: number; readonly height: number };
export const US_LETTER: Paper = { width: 612, height: 792 };
export const A4: Paper = { width: 595.28, height: 841.89 };
