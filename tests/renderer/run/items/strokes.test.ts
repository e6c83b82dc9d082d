import { describe, expect, it } from 'vitest';
import { beginStroke, goOn, isSignature, type Strokes, withoutLast } from '../../../../renderer/run/items/strokes.ts';

describe('a drawn signature', () => {
  const drawn: Strokes = goOn(goOn(beginStroke([], { x: 0, y: 0 }), { x: 30, y: 0 }), { x: 30, y: 40 });

  it('is more than a touch by accident', () => {
    expect(isSignature([])).toBe(false);
    expect(isSignature(beginStroke([], { x: 5, y: 5 }))).toBe(false);
    expect(isSignature(drawn)).toBe(true);
  });

  it('loses its last stroke and nothing else', () => {
    const two = beginStroke(drawn, { x: 100, y: 100 });
    expect(withoutLast(two)).toEqual(drawn);
    expect(withoutLast([])).toEqual([]);
  });

  it('goes nowhere while no stroke was begun', () => {
    expect(goOn([], { x: 1, y: 1 })).toEqual([]);
  });
});
