/** Each verdict's own shape, so that it reads without colour: on a copy, on a fax, by a colour-blind reader. */
import type { Verdict } from '../../../domain/judgement/finding.ts';
import { assertNever } from '../../../domain/result.ts';
import { COLOURS } from '../documentColours.ts';
import type { PathOp } from './pageModel.ts';

export function verdictShape(verdict: Verdict, x: number, y: number, size: number): readonly PathOp[] {
  const at = (right: number, down: number): string => `${round(x + right * size)} ${round(y + down * size)}`;
  const outline = (path: string): PathOp => shape(path, null);
  switch (verdict) {
    case 'within':
      return [
        shape(circle(x + size / 2, y + size / 2, size / 2), COLOURS.green, COLOURS.green),
        {
          ...shape(`M ${at(0.26, 0.52)} L ${at(0.44, 0.7)} L ${at(0.75, 0.32)}`, null),
          stroke: COLOURS.paper,
          width: 1,
        },
      ];
    case 'near-the-edge':
      return [
        outline(`M ${at(0.5, 0.04)} L ${at(0.98, 0.92)} L ${at(0.02, 0.92)} Z`),
        shape(`M ${at(0.5, 0.35)} L ${at(0.5, 0.7)}`, null),
      ];
    case 'outside':
      return [shape(`M ${at(0.5, 0)} L ${at(1, 0.5)} L ${at(0.5, 1)} L ${at(0, 0.5)} Z`, COLOURS.ink)];
    case 'stop': {
      const corner = 0.3;
      const path = `M ${at(corner, 0)} L ${at(1 - corner, 0)} L ${at(1, corner)} L ${at(1, 1 - corner)} L ${at(1 - corner, 1)} L ${at(corner, 1)} L ${at(0, 1 - corner)} L ${at(0, corner)} Z`;
      return [
        shape(path, COLOURS.ember, COLOURS.ember),
        { ...shape(`M ${at(0.22, 0.5)} L ${at(0.78, 0.5)}`, null), stroke: COLOURS.paper, width: 1.4 },
      ];
    }
    case 'no-limit-on-sheet':
      return [outline(circle(x + size / 2, y + size / 2, size / 2 - 0.4))];
    case 'cannot-tell-apart':
      return [
        outline(`M ${at(0.05, 0.05)} L ${at(0.95, 0.05)} L ${at(0.95, 0.95)} L ${at(0.05, 0.95)} Z`),
        shape(`M ${at(0.05, 0.95)} L ${at(0.95, 0.05)} L ${at(0.95, 0.95)} Z`, COLOURS.ink),
      ];
    case 'cannot-judge':
      return [
        outline(`M ${at(0.05, 0.05)} L ${at(0.95, 0.05)} L ${at(0.95, 0.95)} L ${at(0.05, 0.95)} Z`),
        outline(`M ${at(0.05, 0.05)} L ${at(0.95, 0.95)} M ${at(0.95, 0.05)} L ${at(0.05, 0.95)}`),
      ];
    default:
      return assertNever(verdict);
  }
}

/** Four curves: the drawing library takes far longer over arcs. The factor makes a cubic curve a quarter circle. */
export function circle(x: number, y: number, radius: number): string {
  const reach = radius * 0.5523;
  const at = (right: number, down: number): string => `${round(x + right)} ${round(y + down)}`;
  return [
    `M ${at(radius, 0)}`,
    `C ${at(radius, reach)} ${at(reach, radius)} ${at(0, radius)}`,
    `C ${at(-reach, radius)} ${at(-radius, reach)} ${at(-radius, 0)}`,
    `C ${at(-radius, -reach)} ${at(-reach, -radius)} ${at(0, -radius)}`,
    `C ${at(reach, -radius)} ${at(radius, -reach)} ${at(radius, 0)} Z`,
  ].join(' ');
}

function shape(path: string, fill: PathOp['fill'], stroke: PathOp['stroke'] = COLOURS.ink): PathOp {
  return { kind: 'path', path, fill, stroke, width: 0.8 };
}

/** Thousandths of a point: shorter files, and no difference anybody could see. */
export function round(value: number | undefined): number {
  return Math.round((value ?? 0) * 1000) / 1000;
}
