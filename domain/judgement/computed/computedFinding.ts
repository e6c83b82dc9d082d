/** A number worked out from several readings, as a finding of its own: formula, inputs, result and how far it can be off. */
import type { Block } from '../../procedure/modelSheet.ts';
import { buildFinding } from '../buildFinding.ts';
import type { Finding, FindingBasis, Verdict } from '../finding.ts';
import { inputsOf, type Measured } from '../measured.ts';
import { proofOf } from '../proof/proofOf.ts';
import type { RunContext } from '../runContext.ts';

export type ComputedParts = {
  readonly name: string;
  readonly point: string | null;
  readonly from: readonly Measured[];
  readonly formula: string;
  readonly unit: string;
  readonly value: number;
  readonly plusMinus: number | null;
  readonly verdict?: Verdict;
  readonly blocks?: readonly Block[];
  readonly basis?: Partial<FindingBasis>;
  readonly missing?: readonly string[];
};

/** Without a verdict of its own it is information: no limit is on the sheet for it. */
export function computedFinding(parts: ComputedParts, context: RunContext): Finding {
  const { from, formula, value, unit, plusMinus, basis = {} } = parts;
  return buildFinding({
    subject: subjectOf(parts),
    verdict: parts.verdict ?? 'no-limit-on-sheet',
    proof: proofOf(from, context),
    blocks: parts.blocks ?? [],
    basis: {
      formula,
      result: { value, unit, plusMinus },
      ...basis,
      inputs: { ...inputsOf(from), ...basis.inputs },
    },
    missing: parts.missing ?? [],
  });
}

export function cannotCompute(
  parts: Pick<ComputedParts, 'name' | 'point' | 'from' | 'formula' | 'basis' | 'blocks'> & {
    readonly missing: readonly string[];
  },
  context: RunContext,
): Finding {
  const { from, formula, basis = {} } = parts;
  return buildFinding({
    subject: subjectOf(parts),
    verdict: 'cannot-judge',
    proof: proofOf(from, context),
    blocks: parts.blocks ?? [],
    basis: { formula, ...basis, inputs: { ...inputsOf(from), ...basis.inputs } },
    missing: parts.missing,
  });
}

function subjectOf({ name, point }: { readonly name: string; readonly point: string | null }): string {
  return `computed:${name}${point === null ? '' : `@${point}`}`;
}

/**
 * How far a result can be off when each input is off by its own class, the errors being independent: the root of the sum
 * of squares of what each alone would change. null: nothing is known of the inputs' accuracy, or the formula ends nearby.
 */
export function plusMinusOf(
  formula: (...values: number[]) => number | null,
  inputs: readonly Measured[],
): number | null {
  const values = inputs.map((one) => one.value);
  const result = formula(...values);
  if (result === null || inputs.every((one) => one.plusMinus === 0)) return null;
  const squares = inputs.map((one, index) => {
    if (one.plusMinus === 0) return 0;
    const moved = formula(...values.map((value, at) => (at === index ? value + one.plusMinus : value)));
    return moved === null ? Number.NaN : (moved - result) ** 2;
  });
  const sum = squares.reduce((total, square) => total + square, 0);
  return Number.isNaN(sum) ? null : Math.sqrt(sum);
}
