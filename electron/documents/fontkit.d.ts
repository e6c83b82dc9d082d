/** The part of fontkit that documents use; the package ships no types. */
declare module 'fontkit' {
  export type GlyphPosition = { xAdvance: number; yAdvance: number; xOffset: number; yOffset: number };
  export type GlyphRun = {
    readonly glyphs: readonly unknown[];
    readonly positions: readonly GlyphPosition[];
    readonly advanceWidth: number;
  };
  export type Font = {
    readonly unitsPerEm: number;
    readonly ascent: number;
    readonly descent: number;
    layout(text: string, ...options: unknown[]): GlyphRun;
    hasGlyphForCodePoint(codePoint: number): boolean;
  };
  export function create(file: Uint8Array): Font;
}
