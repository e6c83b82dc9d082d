/** The part of fontkit that documents use; the package ships no types. */
declare module 'fontkit' {
  export type GlyphRun = { readonly advanceWidth: number };
  export type Font = {
    readonly unitsPerEm: number;
    readonly ascent: number;
    readonly descent: number;
    layout(text: string): GlyphRun;
    hasGlyphForCodePoint(codePoint: number): boolean;
  };
  export function create(file: Uint8Array): Font;
}
