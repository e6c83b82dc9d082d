/** The one typeface of all documents (Source Sans, OFL-1.1), read once per process: reading costs more than drawing. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { create, type Font } from 'fontkit';

export type FontName = 'regular' | 'semibold' | 'italic';

// TTF only: the other formats of the package can't be embedded, or lack letters.
const FILES: Record<FontName, string> = {
  regular: 'source-sans/TTF/SourceSans3-Regular.ttf',
  semibold: 'source-sans/TTF/SourceSans3-Semibold.ttf',
  italic: 'source-sans/TTF/SourceSans3-It.ttf',
};
export const FONT_NAMES = Object.keys(FILES) as readonly FontName[];

const fonts = new Map<FontName, Font>();

export function documentFont(name: FontName): Font {
  const known = fonts.get(name);
  if (known) return known;
  const font = create(readFileSync(createRequire(import.meta.url).resolve(FILES[name])));
  fonts.set(name, font);
  return font;
}

export function hasGlyph(codePoint: number): boolean {
  return FONT_NAMES.every((name) => documentFont(name).hasGlyphForCodePoint(codePoint));
}
