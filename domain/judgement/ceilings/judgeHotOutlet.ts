/**
 * Hot water that nothing mixes down is the water at the tap. While the mixed outlet is still to be read that can't be said;
 * where it is left out with a reason, the hot outlet is held against the same ceilings.
 */
import { buildFinding } from '../buildFinding.ts';
import type { Finding } from '../finding.ts';
import { judgedReading } from '../limits/judgedValue.ts';
import type { RunContext } from '../runContext.ts';
import { ceilingsFor } from '../safetyCeilings.ts';
import { judgeCeiling } from './judgeCeilings.ts';

const AT_THE_TAP = 'mixedOutletC';

export function judgeHotOutlet(context: RunContext): readonly Finding[] {
  if (context.latest(AT_THE_TAP) !== undefined) return [];
  const ceilings = ceilingsFor(context.region).filter(({ quantity }) => quantity === AT_THE_TAP);
  const isLeftOut = isMixedOutletLeftOut(context);
  return context.all('hotOutletC').flatMap((hot) => {
    const value = judgedReading(hot, context);
    const findings = ceilings.map((ceiling) => judgeCeiling(value, { ...ceiling, quantity: hot.quantity }));
    if (isLeftOut) return findings;
    const isBeyondAny = findings.some(({ verdict }) => verdict !== 'within' && verdict !== 'near-the-edge');
    if (!isBeyondAny) return [];
    return [
      buildFinding({
        subject: 'ceiling:tap-water',
        readingId: hot.reading.readingId,
        verdict: 'cannot-judge',
        proof: value.proof,
        blocks: ['leaving'],
        basis: { ...value.basis, from: 'ceiling', source: ceilings[0]?.source ?? null },
        missing: ['the mixed water at the tap, or why there is none'],
      }),
    ];
  });
}

function isMixedOutletLeftOut(context: RunContext): boolean {
  const isReadingLeftOut = context.record.readings.some(
    (one) => one.quantity === AT_THE_TAP && one.supersededById === null && (one.notMeasuredReason?.trim() ?? '') !== '',
  );
  const items = context.steps.flatMap((step) => step.items);
  return (
    isReadingLeftOut ||
    items.some(
      (item) =>
        item.kind === 'read' &&
        item.quantity === AT_THE_TAP &&
        context.answer(item.key)?.value === null &&
        (context.answer(item.key)?.reason?.trim() ?? '') !== '',
    )
  );
}
