/** The content of a document before it has pages: headings, paragraphs, facts, tables, pictures, in reading order. */
import type { Verdict } from '../../../domain/judgement/finding.ts';
import type { DrawOp } from './pageModel.ts';

export type Tone = 'plain' | 'muted' | 'strong' | 'stop';

export type Cell = {
  readonly text: string;
  readonly tone?: Tone;
  /** In smaller letters under the text. */
  readonly small?: string | null;
  /** Drawn as a shape before the text: its word must say the same. */
  readonly verdict?: Verdict;
};

export type Column = {
  readonly header: string;
  /** Share of what is left after the fixed columns. */
  readonly share?: number;
  /** In points. */
  readonly width?: number;
  /** `decimal`: the marks stand under each other. `right`: for numbers whose unit follows in the next column. */
  readonly align?: 'left' | 'right' | 'decimal';
};

export type TableBlock = {
  readonly kind: 'table';
  readonly columns: readonly Column[];
  readonly rows: readonly (readonly Cell[])[];
  /** The first column names the row. */
  readonly hasRowHeaders?: boolean;
};

export type Fact = { readonly label: string; readonly value: string; readonly small?: string | null };

/** A drawing with a width of its own; `draw` is given the place of its top left corner. */
export type FigureBlock = {
  readonly kind: 'figure';
  readonly height: number;
  readonly alt: string;
  readonly draw: (x: number, y: number, width: number) => readonly DrawOp[];
};

export type Photo = {
  readonly sha256: string;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly caption: string;
  readonly small: string;
};

export type Block =
  | { readonly kind: 'heading'; readonly level: 1 | 2 | 3; readonly text: string }
  /** `keepsNext`: says something about what follows, and is never the last on its page. */
  | { readonly kind: 'paragraph'; readonly text: string; readonly tone?: Tone; readonly keepsNext?: boolean }
  | { readonly kind: 'list'; readonly items: readonly string[] }
  /** Boxed: must not be overlooked. */
  | {
      readonly kind: 'notice';
      readonly title: string;
      readonly lines: readonly string[];
      readonly tone: 'plain' | 'stop';
    }
  | {
      readonly kind: 'facts';
      readonly facts: readonly Fact[];
      readonly beside?: FigureBlock & { readonly width: number };
    }
  | TableBlock
  | FigureBlock
  | { readonly kind: 'photos'; readonly photos: readonly Photo[] }
  /** On one page if they fit one. */
  | { readonly kind: 'together'; readonly blocks: readonly Block[] }
  | { readonly kind: 'page-break' };
