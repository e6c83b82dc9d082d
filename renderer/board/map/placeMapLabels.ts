/** Where the words beside the marks of a map go: to the side where they cover least of the others. */
import type { Point } from './mapFrame.ts';

export type LabelledPoint = Point & { readonly widthPx: number };

export type PlacedLabel = Point & { readonly anchor: 'start' | 'end' | 'middle' };

export const LABEL_HEIGHT_PX = 14;
const MARK_PX = 9;

type Rect = { readonly left: number; readonly top: number; readonly right: number; readonly bottom: number };

/** In the order given: who comes first has the choice. The point of a label is where its line of words stands. */
export function placeMapLabels(points: readonly LabelledPoint[]): readonly PlacedLabel[] {
  const taken: Rect[] = points.map(({ x, y }) => ({
    left: x - MARK_PX,
    top: y - MARK_PX,
    right: x + MARK_PX,
    bottom: y + MARK_PX,
  }));
  return points.map((point, index) => {
    const [best] = candidatesOf(point)
      .map((one, order) => ({ ...one, order, covered: coveredBy(one.rect, taken, index) }))
      .toSorted((a, b) => a.covered - b.covered || a.order - b.order);
    if (best === undefined) throw new Error('there are always candidates');
    taken.push(best.rect);
    return best.label;
  });
}

function candidatesOf({
  x,
  y,
  widthPx,
}: LabelledPoint): readonly { readonly label: PlacedLabel; readonly rect: Rect }[] {
  const side = MARK_PX + 3;
  const middle = LABEL_HEIGHT_PX / 2;
  const at = (label: PlacedLabel): { readonly label: PlacedLabel; readonly rect: Rect } => {
    const left =
      label.anchor === 'start' ? label.x : label.anchor === 'end' ? label.x - widthPx : label.x - widthPx / 2;
    return {
      label,
      rect: { left, right: left + widthPx, top: label.y - LABEL_HEIGHT_PX + 3, bottom: label.y + 3 },
    };
  };
  return [
    at({ x: x + side, y: y + middle - 3, anchor: 'start' }),
    at({ x: x - side, y: y + middle - 3, anchor: 'end' }),
    at({ x, y: y - side, anchor: 'middle' }),
    at({ x, y: y + side + LABEL_HEIGHT_PX - 3, anchor: 'middle' }),
    at({ x: x + side, y: y - side, anchor: 'start' }),
    at({ x: x + side, y: y + side + LABEL_HEIGHT_PX - 3, anchor: 'start' }),
  ];
}

/** Square pixels of the others under it; its own mark is never under it. */
function coveredBy(rect: Rect, taken: readonly Rect[], own: number): number {
  return taken.reduce((sum, other, index) => (index === own ? sum : sum + overlapOf(rect, other)), 0);
}

function overlapOf(a: Rect, b: Rect): number {
  const wide = Math.min(a.right, b.right) - Math.max(a.left, b.left);
  const high = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
  return wide > 0 && high > 0 ? wide * high : 0;
}
