/** The record's fingerprint to read, type and scan. */
import { create } from 'qrcode';
import { COLOURS } from '../documentColours.ts';
import type { FigureBlock } from '../page/blocks.ts';
import type { DrawOp } from '../page/pageModel.ts';
import { SMALL, textLine } from '../page/textStyle.ts';
import { round } from '../page/verdictShape.ts';
import { textWidth } from '../textMeasure.ts';

/** Groups of eight: short enough to compare by eye. */
export function fingerprintGroups(sha256: string): readonly string[] {
  return sha256.match(/.{8}/gu) ?? [];
}

const SIDE = 92;
const WIDTH = 116;

export function fingerprintFigure(sha256: string, isSealed: boolean): FigureBlock & { readonly width: number } {
  const title = isSealed ? 'Fingerprint (SHA-256)' : 'Not sealed (SHA-256 of the draft)';
  const groups = fingerprintGroups(sha256);
  const lines = [0, 2, 4, 6].map((at) => groups.slice(at, at + 2).join(' '));
  return {
    kind: 'figure',
    width: WIDTH,
    height: SIDE + 8 + SMALL.leading * (lines.length + 1),
    alt: `${title}: ${groups.join(' ')}. The code beside it holds the same.`,
    draw: (x, y) => {
      const style = { ...SMALL, colour: COLOURS.ink };
      const right = x + WIDTH;
      const ops: DrawOp[] = [
        { kind: 'path', path: qrPath(sha256, right - SIDE, y, SIDE), fill: COLOURS.ink, stroke: null, width: 0 },
      ];
      for (const [index, line] of [title, ...lines].entries()) {
        const left = right - textWidth(line, style.font, style.size);
        ops.push(textLine(line, left, y + SIDE + 8 + index * style.leading, style));
      }
      return ops;
    },
  };
}

/** One path for the whole code; neighbouring dark modules of a row are one bar. */
function qrPath(sha256: string, left: number, top: number, side: number): string {
  // Capitals and digits only: the code is coarser then, and a worn print still reads.
  const { modules } = create(`SHA256:${sha256.toUpperCase()}`, { errorCorrectionLevel: 'M' });
  const step = side / modules.size;
  let path = '';
  for (let row = 0; row < modules.size; row += 1) {
    for (let column = 0; column < modules.size; column += 1) {
      if (!isDark(modules, row, column) || isDark(modules, row, column - 1)) continue;
      let end = column;
      while (isDark(modules, row, end)) end += 1;
      const [x1, x2] = [left + column * step, left + end * step].map(round);
      const [y1, y2] = [top + row * step, top + (row + 1) * step].map(round);
      path += `M ${x1} ${y1} L ${x2} ${y1} L ${x2} ${y2} L ${x1} ${y2} Z `;
    }
  }
  return path.trimEnd();
}

function isDark(
  modules: { readonly size: number; readonly data: Uint8Array | readonly number[] },
  row: number,
  column: number,
): boolean {
  return column >= 0 && column < modules.size && modules.data[row * modules.size + column] === 1;
}
