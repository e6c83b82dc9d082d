import { describe, expect, it } from 'vitest';
import { hasGlyph } from '../../../electron/documents/documentFonts.ts';
import { drawableText, NO_GLYPH } from '../../../electron/documents/drawableText.ts';

describe('drawableText', () => {
  it('composes letters that come in parts', () => {
    expect(drawableText('A\u030arhus, Z\u0302')).toBe('Århus, Ẑ');
  });

  it.each(['Łukasz', 'Ærøskøbing', 'Ørsted', 'Ñandú', 'Škvorecký', 'Ωμέγα', 'Привет', '≤ ≥ ± × ÷ λ µ ₂ ³ ½ → °'])(
    'leaves %s as it is',
    (text) => {
      expect(drawableText(text)).toBe(text);
    },
  );

  it('puts a box where the typeface has no letter, one for each', () => {
    expect(drawableText('山田 🙂 נ')).toBe(`${NO_GLYPH}${NO_GLYPH} ${NO_GLYPH} ${NO_GLYPH}`);
  });

  it('takes out what could make a text read as another one', () => {
    expect(drawableText('abc\u202egnp.exe\u2066\u0000\u0007')).toBe('abcgnp.exe');
    expect(drawableText('a\tb\r\nc\u2028d')).toBe('a b\nc d');
  });

  it('mends a lone surrogate instead of failing', () => {
    expect(drawableText('x\ud800y')).toBe(`x${NO_GLYPH}y`);
  });

  it('can draw the box itself', () => {
    expect(hasGlyph(NO_GLYPH.codePointAt(0) ?? 0)).toBe(true);
  });
});
