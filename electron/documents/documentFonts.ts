/**
 * The one typeface of all documents (Source Sans, OFL-1.1). Each font is read once per process and each word is laid out
 * once: both cost more than drawing.
 */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { create, type Font, type GlyphPosition, type GlyphRun } from 'fontkit';

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
  const font = rememberingLayout(readFont(name));
  fonts.set(name, font);
  return font;
}

/** As the file has it, read anew. */
export function readFont(name: FontName): Font {
  return create(readFileSync(createRequire(import.meta.url).resolve(FILES[name])));
}

export function hasGlyph(codePoint: number): boolean {
  return FONT_NAMES.every((name) => documentFont(name).hasGlyphForCodePoint(codePoint));
}

const MOST_KEPT = 30_000;

function rememberingLayout(font: Font): Font {
  const runs = new Map<string, GlyphRun>();
  const layout = (text: string, ...options: unknown[]): GlyphRun => {
    if (options.some((option) => option !== undefined)) return font.layout(text, ...options);
    let run = runs.get(text);
    if (!run) {
      run = font.layout(text);
      if (runs.size > MOST_KEPT) runs.clear();
      runs.set(text, run);
    }
    return copyOf(run);
  };
  return Object.create(font, { layout: { value: layout } });
}

/** The drawing scales the positions it is given in place, and adds up the width afterwards. */
function copyOf(run: GlyphRun): GlyphRun {
  const positions: GlyphPosition[] = run.positions.map(({ xAdvance, yAdvance, xOffset, yOffset }) => ({
    xAdvance,
    yAdvance,
    xOffset,
    yOffset,
  }));
  return {
    glyphs: run.glyphs,
    positions,
    get advanceWidth() {
      return positions.reduce((sum, position) => sum + position.xAdvance, 0);
    },
  };
}
