/** Holds every reading and every derived value against the safety ceilings of the site's region, whatever the sheet says. */
import { buildFinding } from '../buildFinding.ts';
import type { Finding } from '../finding.ts';
import { againstLimit } from '../limits/againstLimit.ts';
import type { JudgedValue } from '../limits/judgedValue.ts';
import type { RunContext } from '../runContext.ts';
import { ceilingsFor, type SafetyCeiling } from '../safetyCeilings.ts';

export function judgeCeilings(values: readonly JudgedValue[], context: RunContext): readonly Finding[] {
  const ceilings = ceilingsFor(context.region);
  return values.flatMap((value) =>
    ceilings.filter(({ quantity }) => quantity === value.quantity).map((ceiling) => judgeCeiling(value, ceiling)),
  );
}

export function judgeCeiling(value: JudgedValue, ceiling: SafetyCeiling): Finding {
  const { min = null, max = null, edge, severity } = ceiling;
  const { verdict, isNominallyInside } = againstLimit(value, { min, max, edge, severity });
  const isBeyond = verdict === 'stop' || verdict === 'outside';
  return buildFinding({
    subject: `ceiling:${ceiling.key}${value.point === null ? '' : `@${value.point}`}`,
    readingId: value.readingId,
    verdict,
    proof: value.proof,
    blocks: isBeyond || !isNominallyInside || !value.proof.proven ? ceiling.blocks : [],
    basis: {
      ...value.basis,
      limit: { quantity: value.quantity, point: value.point, min, max, severity },
      from: 'ceiling',
      source: ceiling.source,
    },
    missing: verdict === 'cannot-judge' ? ['a reading inside the instrument’s range'] : [],
    makeSafe: isBeyond ? ceiling.makeSafe : [],
    leaveFirst: isBeyond && ceiling.leaveFirst === true,
  });
}
