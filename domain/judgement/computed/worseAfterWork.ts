/** A reading over a stop that came out higher after the work done on it: told beside the stop, never averaged away. */
import { buildFinding } from '../buildFinding.ts';
import type { Finding } from '../finding.ts';
import { inputsOf, type Measured } from '../measured.ts';
import type { RunContext } from '../runContext.ts';

export function worseAfterWork(context: RunContext): readonly Finding[] {
  const live = new Map(context.measured.map((one) => [one.reading.readingId, one]));
  return context.replaced.flatMap((before) => {
    const after = live.get(before.reading.supersededById ?? '');
    if (before.quantity !== 'coPpm' || after?.quantity !== 'coPpm' || !isWorse(before, after)) return [];
    return [
      buildFinding({
        subject: `worse:${before.quantity}${before.point === null ? '' : `@${before.point}`}`,
        readingId: after.reading.readingId,
        verdict: 'cannot-judge',
        blocks: ['leaving'],
        basis: {
          inputs: { before: shown(before), after: shown(after), ...inputsOf([after]) },
          formula: 'after − before',
        },
        missing: ['why CO rose after the work'],
      }),
    ];
  });
}

/** Higher for certain: at least as much as before could have been, the instrument's own error left out. */
function isWorse(before: Measured, after: Measured): boolean {
  return after.value - after.plusMinus > before.value + before.plusMinus;
}

function shown({ reading, value }: Measured): number | string {
  return reading.comparator === '=' ? value : `${reading.comparator}${value}`;
}
