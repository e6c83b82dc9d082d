/**
 * Contrast of every pair the screens use, by the definition of WCAG 2.2 (relative luminance and contrast ratio, as in
 * success criteria 1.4.3 and 1.4.11): 4.5 for text, 3 for the edges of controls and the focus ring.
 */
import { describe, expect, it } from 'vitest';
import { HIGH_CONTRAST, NIGHT, PAPER, type Palette } from '../../renderer/palette.ts';

const TEXT = 4.5;
const EDGE = 3;

const PAIRS: readonly (readonly [front: keyof Palette, back: keyof Palette, least: number])[] = [
  ...(['paper', 'sheet', 'shade'] as const).flatMap((back) =>
    (['ink', 'faintInk', 'fir', 'ember', 'ochre'] as const).map((front) => [front, back, TEXT] as const),
  ),
  ...(['firWash', 'emberWash', 'ochreWash'] as const).map((back) => ['ink', back, TEXT] as const),
  ['fir', 'firWash', TEXT],
  ['ember', 'emberWash', TEXT],
  ['ochre', 'ochreWash', TEXT],
  ['onFir', 'fir', TEXT],
  ['onEmber', 'ember', TEXT],
  ['edge', 'sheet', EDGE],
  ['edge', 'paper', EDGE],
  ['focus', 'paper', EDGE],
  ['focus', 'sheet', EDGE],
];

describe.each([
  ['day', PAPER],
  ['night', NIGHT],
  ['high contrast', HIGH_CONTRAST],
] as const)('palette: %s', (_look, palette) => {
  it.each(PAIRS)('%s on %s reaches %d', (front, back, least) => {
    expect(contrast(palette[front], palette[back])).toBeGreaterThanOrEqual(least);
  });
});

describe('contrast', () => {
  it('should be 21 between black and white, the largest WCAG knows', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 9);
  });
});

function contrast(a: string, b: string): number {
  const [light = 0, dark = 0] = [luminance(a), luminance(b)].sort((x, y) => y - x);
  return (light + 0.05) / (dark + 0.05);
}

function luminance(hex: string): number {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((at) => {
    const share = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}
