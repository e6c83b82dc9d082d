/** How wide text runs and where its lines break, in points. */
import { documentFont, type FontName } from './documentFonts.ts';

export function textWidth(text: string, font: FontName, size: number): number {
  let width = 0;
  // The drawing lays out word by word, each with its following space: measured the same way, both agree to the last bit.
  for (const word of text.match(/[^ ]* |[^ ]+/gu) ?? []) width += wordWidth(word, font);
  return width * size;
}

/** Breaks at spaces and after hyphens and slashes, and inside a word only when it is longer than a line. */
export function wrapText(text: string, font: FontName, size: number, width: number): readonly string[] {
  return text.split('\n').flatMap((paragraph) => wrapParagraph(paragraph, font, size, width));
}

function wrapParagraph(text: string, font: FontName, size: number, width: number): readonly string[] {
  if (textWidth(text, font, size) <= width) return [text.trimEnd()];
  const lines: string[] = [];
  let line = '';
  for (const piece of text.match(BREAKABLE) ?? []) {
    if (textWidth((line + piece).trimEnd(), font, size) <= width) {
      line += piece;
      continue;
    }
    if (line.trim() !== '') lines.push(line.trimEnd());
    line = piece.trimStart();
    while (textWidth(line.trimEnd(), font, size) > width && [...line].length > 1) {
      const fitting = longestFitting(line, font, size, width);
      lines.push(fitting);
      line = line.slice(fitting.length);
    }
  }
  if (line.trim() !== '' || lines.length === 0) lines.push(line.trimEnd());
  return lines;
}

/** Whole letters only, and always at least one, so that the text gets shorter each time. */
function longestFitting(text: string, font: FontName, size: number, width: number): string {
  const letters = [...text];
  let low = 1;
  let high = letters.length;
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (textWidth(letters.slice(0, middle).join(''), font, size) <= width) low = middle;
    else high = middle - 1;
  }
  return letters.slice(0, low).join('');
}

/** A word with what may follow it on the line: its spaces, or the hyphen or slash it may be broken after. */
const BREAKABLE = /[^ \-/]+[-/]+(?=[^ \-/])|[^ ]*? +|[^ ]+/gu;

const MOST_KEPT = 30_000;
const widths: Record<FontName, Map<string, number>> = { regular: new Map(), semibold: new Map(), italic: new Map() };

/** In em. */
function wordWidth(word: string, name: FontName): number {
  const known = widths[name].get(word);
  if (known !== undefined) return known;
  const font = documentFont(name);
  const width = font.layout(word).advanceWidth / font.unitsPerEm;
  if (widths[name].size > MOST_KEPT) widths[name].clear();
  widths[name].set(word, width);
  return width;
}
