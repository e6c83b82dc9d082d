/** The few text styles of documents and how a line of text is set into its box. */
import { COLOURS, type Colour } from '../documentColours.ts';
import type { FontName } from '../documentFonts.ts';
import type { Tone } from './blocks.ts';
import type { TextOp } from './pageModel.ts';

export type TextStyle = {
  readonly font: FontName;
  readonly size: number;
  /** From line to line. */
  readonly leading: number;
  readonly colour: Colour;
};

export const BODY: TextStyle = { font: 'regular', size: 9.25, leading: 12.2, colour: COLOURS.ink };
export const TABLE: TextStyle = { font: 'regular', size: 8.5, leading: 10.8, colour: COLOURS.ink };
export const SMALL: TextStyle = { font: 'regular', size: 7.4, leading: 9.2, colour: COLOURS.muted };
export const HEAD: TextStyle = { font: 'semibold', size: 7.6, leading: 9.6, colour: COLOURS.muted };

export function toneFont(tone: Tone): FontName {
  return tone === 'strong' || tone === 'stop' ? 'semibold' : 'regular';
}

export function toneColour(tone: Tone): Colour {
  if (tone === 'stop') return COLOURS.ember;
  return tone === 'muted' ? COLOURS.muted : COLOURS.ink;
}

/** Ascenders of Source Sans reach about 0.72 em; the rest of the leading is shared above and below. */
export function textLine(text: string, x: number, top: number, style: TextStyle): TextOp {
  const baseline = top + style.leading / 2 + style.size * 0.26;
  return { kind: 'text', x, baseline, text, font: style.font, size: style.size, colour: style.colour };
}
