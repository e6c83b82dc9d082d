/** A signature as it was drawn: strokes of points, in the pad's own measure. The last stroke can be taken back. */

export type Point = { readonly x: number; readonly y: number };
export type Strokes = readonly (readonly Point[])[];

export function beginStroke(strokes: Strokes, at: Point): Strokes {
  return [...strokes, [at]];
}

export function goOn(strokes: Strokes, to: Point): Strokes {
  const current = strokes.at(-1);
  return current === undefined ? strokes : [...strokes.slice(0, -1), [...current, to]];
}

export function withoutLast(strokes: Strokes): Strokes {
  return strokes.slice(0, -1);
}

/** A touch by accident is no signature: ink must have gone some way. */
export function isSignature(strokes: Strokes): boolean {
  return strokes.reduce((length, stroke) => length + lengthOf(stroke), 0) > 40;
}

function lengthOf(stroke: readonly Point[]): number {
  return stroke.reduce((length, point, index) => {
    const before = stroke[index - 1];
    return before === undefined ? length : length + Math.hypot(point.x - before.x, point.y - before.y);
  }, 0);
}
