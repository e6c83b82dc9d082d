/** The analyser check in clean outside air. */
import { buildFinding } from '../buildFinding.ts';
import type { Finding } from '../finding.ts';
import { againstLimit } from '../limits/againstLimit.ts';
import { inputsOf } from '../measured.ts';
import type { RunContext } from '../runContext.ts';
import { FRESH_AIR_LIMITS } from './freshAirLimits.ts';
import { proofOf } from './proofOf.ts';

export function judgeFreshAir(context: RunContext): readonly Finding[] {
  return FRESH_AIR_LIMITS.flatMap(({ quantity, min, max, source }) =>
    context.all(quantity).map((one) => {
      // The check is of the display itself, so the class of the instrument is what is being checked and not added to it.
      const shown = { value: one.value, lowest: one.value, highest: one.value };
      const isOpen = one.reading.comparator !== '=';
      const { verdict } = againstLimit(shown, { min, max, edge: 0, severity: 'outside' });
      return buildFinding({
        subject: `zero:${quantity}`,
        readingId: one.reading.readingId,
        verdict: isOpen ? 'outside' : verdict,
        proof: proofOf([one], context),
        blocks: ['leaving'],
        basis: {
          limit: { quantity, point: null, min, max, severity: 'outside' },
          from: 'practice',
          source: { kind: 'common-practice', source },
          inputs: inputsOf([one]),
        },
      });
    }),
  );
}
