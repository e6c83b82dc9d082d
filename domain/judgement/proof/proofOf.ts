/** Whether a reading, or a number computed from several, is proof, and if not, every reason why. */
import { PROVEN } from '../buildFinding.ts';
import type { NotProvenReason, Proof } from '../finding.ts';
import type { Measured } from '../measured.ts';
import { FLUE_GAS } from '../quantityGroups.ts';
import type { RunContext } from '../runContext.ts';
import { firingReasons } from './firingReasons.ts';
import { instrumentReasons } from './instrumentReasons.ts';
import { otherReasons } from './otherReasons.ts';
import { steadyReasons } from './steadyReasons.ts';

export function proofOf(readings: readonly Measured[], context: RunContext): Proof {
  const because = new Set(readings.flatMap((one) => reasonsOf(one, context)));
  return because.size === 0 ? PROVEN : { proven: false, because: [...because].sort() };
}

const memo = new WeakMap<Measured, readonly NotProvenReason[]>();

/** A reading belongs to one context only, so its reasons can be remembered with it. */
function reasonsOf(one: Measured, context: RunContext): readonly NotProvenReason[] {
  const known = memo.get(one);
  if (known) return known;
  const isFlueGas = FLUE_GAS.has(one.quantity);
  const reasons = [
    ...(isFlueGas ? [...firingReasons(one, context), ...steadyReasons(one, context)] : []),
    ...instrumentReasons(one, context),
    ...otherReasons(one, context),
  ];
  memo.set(one, reasons);
  return reasons;
}
