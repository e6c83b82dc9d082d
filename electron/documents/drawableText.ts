/** Makes any text fit to be drawn: composed letters, no control characters, and a visible box for a letter the typeface lacks. */
import { hasGlyph } from './documentFonts.ts';

/** Stands for a letter that can't be drawn. A silent gap would change a name. */
export const NO_GLYPH = '\u25a1';

export function drawableText(text: string): string {
  const known = drawn.get(text);
  if (known !== undefined) return known;
  const plain = text
    .toWellFormed()
    .normalize('NFC')
    .replace(/[\t\v\f\u2028\u2029\u0085]/gu, ' ')
    .replace(/\r\n?/gu, '\n')
    // Marks that turn the writing direction or join invisibly could make a name read as another one.
    .replace(INVISIBLE, '');
  let result = '';
  for (const letter of plain) {
    result += letter === '\n' || hasGlyph(letter.codePointAt(0) ?? 0) ? letter : NO_GLYPH;
  }
  if (drawn.size > MOST_KEPT) drawn.clear();
  drawn.set(text, result);
  return result;
}

const INVISIBLE = /(?!\n)(?:[\p{Cc}\p{Cf}]|\p{Variation_Selector})/gu;

const MOST_KEPT = 20_000;
const drawn = new Map<string, string>();
