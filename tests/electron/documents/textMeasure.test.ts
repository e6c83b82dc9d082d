import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readFont } from '../../../electron/documents/documentFonts.ts';
import { drawableText } from '../../../electron/documents/drawableText.ts';
import { textWidth, wrapText } from '../../../electron/documents/textMeasure.ts';

describe('textWidth', () => {
  it.each(['Ærøskøbing', 'Łukasz Brzęczyszczykiewicz', '12.5', 'AVATAR To', ''])(
    'measures %j as the font lays it out',
    (text) => {
      const font = readFont('regular');
      const expected = (font.layout(text).advanceWidth / font.unitsPerEm) * 9;
      // Kerning across a space is the one thing word by word cannot see.
      expect(Math.abs(textWidth(text, 'regular', 9) - expected)).toBeLessThan(0.5);
    },
  );

  it('gives every digit the same width, so that columns align', () => {
    const widths = [...'0123456789'].map((digit) => textWidth(digit, 'regular', 10));
    expect(new Set(widths.map((width) => width.toFixed(6))).size).toBe(1);
  });
});

describe('wrapText', () => {
  it('breaks at spaces, after hyphens and slashes, and keeps a leading minus', () => {
    const width = textWidth('Ærøskøbing-', 'regular', 10) + 0.1;
    expect(wrapText('Ærøskøbing-Łukaszewicz', 'regular', 10, width)).toEqual(['Ærøskøbing-', 'Łukaszewicz']);
    expect(wrapText('x -5', 'regular', 10, textWidth('x -', 'regular', 10))).toEqual(['x', '-5']);
  });

  it('keeps line feeds as they are', () => {
    expect(wrapText('one\ntwo\n\nthree', 'regular', 10, 500)).toEqual(['one', 'two', '', 'three']);
  });

  it('should lose no letter and keep every line inside the width', () => {
    const word = fc.stringMatching(/^[A-Za-zÀ-ž0-9@./-]{1,60}$/u);
    fc.assert(
      fc.property(fc.array(word, { maxLength: 20 }), fc.integer({ min: 12, max: 300 }), (words, width) => {
        const text = drawableText(words.join(' '));
        const lines = wrapText(text, 'regular', 9, width);
        expect(lines.join('').replaceAll(' ', '')).toBe(text.replaceAll(' ', ''));
        for (const line of lines) {
          // A single letter wider than the space stays on its own line.
          if ([...line].length > 1) expect(textWidth(line, 'regular', 9)).toBeLessThanOrEqual(width + 1e-9);
        }
      }),
      { numRuns: 60 },
    );
  });
});
