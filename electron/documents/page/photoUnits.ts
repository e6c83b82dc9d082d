/** Photos three to a row, each whole and upright in a frame of its own, with what it shows below. */
import { COLOURS } from '../documentColours.ts';
import { drawableText } from '../drawableText.ts';
import { wrapText } from '../textMeasure.ts';
import type { Photo } from './blocks.ts';
import type { Area } from './blockUnits.ts';
import type { Nodes, Unit } from './layoutPages.ts';
import { SMALL, TABLE, textLine } from './textStyle.ts';

const ACROSS = 3;
const GAP = 12;
const FRAME_RATIO = 0.75;

export function photoUnits(photos: readonly Photo[], area: Area, nodes: Nodes, section: number): readonly Unit[] {
  const width = (area.width - GAP * (ACROSS - 1)) / ACROSS;
  const frameHeight = width * FRAME_RATIO;
  const rows = Array.from({ length: Math.ceil(photos.length / ACROSS) }, (_, index) =>
    photos.slice(index * ACROSS, (index + 1) * ACROSS),
  );
  return rows.map((row) => {
    const cells = row.map((photo) => ({
      photo,
      figure: nodes.add({ role: 'Figure', parent: section, alt: drawableText(photo.caption) }),
      caption: nodes.add({ role: 'P', parent: section }),
      lines: [
        ...wrapText(drawableText(photo.caption), TABLE.font, TABLE.size, width).map((text) => ({ text, style: TABLE })),
        ...wrapText(drawableText(photo.small), SMALL.font, SMALL.size, width).map((text) => ({ text, style: SMALL })),
      ],
    }));
    const captionHeight = Math.max(
      ...cells.map(({ lines }) => lines.reduce((sum, line) => sum + line.style.leading, 0)),
    );
    return {
      gapBefore: 10,
      height: frameHeight + 4 + captionHeight,
      keepsNext: false,
      place: (y, put) => {
        for (const [index, { photo, figure, caption, lines }] of cells.entries()) {
          const x = area.x + index * (width + GAP);
          put(
            {
              kind: 'path',
              path: `M ${x} ${y} L ${x + width} ${y} L ${x + width} ${y + frameHeight} L ${x} ${y + frameHeight} Z`,
              fill: COLOURS.wash,
              stroke: null,
              width: 0,
            },
            null,
          );
          const scale = Math.min(width / photo.widthPx, frameHeight / photo.heightPx);
          const [shownWidth, shownHeight] = [photo.widthPx * scale, photo.heightPx * scale];
          const left = x + (width - shownWidth) / 2;
          const top = y + (frameHeight - shownHeight) / 2;
          nodes.setBox(figure, [left, top, left + shownWidth, top + shownHeight]);
          put({ kind: 'image', sha256: photo.sha256, x: left, y: top, width: shownWidth, height: shownHeight }, figure);
          let lineY = y + frameHeight + 4;
          for (const line of lines) {
            put(textLine(line.text, x, lineY, line.style), caption);
            lineY += line.style.leading;
          }
        }
      },
    } satisfies Unit;
  });
}
