/** Read before the firing point had settled, before the burner's own tuning was over, or while it still moved. */
import type { NotProvenReason } from '../finding.ts';
import { proofOf } from '../proof/proofOf.ts';
import { FLUE_GAS } from '../quantityGroups.ts';
import { type MistakeRule, mistakeFinding } from './mistakeFinding.ts';

const TOO_EARLY: readonly NotProvenReason[] = ['before-settled', 'tuning-not-finished', 'not-steady'];

export const readBeforeSteady: MistakeRule = {
  row: 20,
  find: (context) =>
    [...context.firingPoints].flatMap((point) => {
      const last = context.rows.findLast((row) => row.point === point && row.readings.some(isFlueGas));
      if (last === undefined) return [];
      const about = last.readings.filter(isFlueGas);
      const proof = proofOf(about, context);
      if (proof.proven || !proof.because.some((reason) => TOO_EARLY.includes(reason))) return [];
      return [
        mistakeFinding(
          {
            code: 'read-before-steady',
            about,
            from: 'practice',
            rule: 'time since the rate was reached, since tuning finished, and agreement of the last samples, as on the sheet',
            ask: 'a new sample when the burner has stood still long enough',
            inputs: { because: proof.because.join(', ') },
            blocks: ['leaving'],
          },
          context,
        ),
      ];
    }),
};

function isFlueGas({ quantity }: { readonly quantity: Parameters<typeof FLUE_GAS.has>[0] }): boolean {
  return FLUE_GAS.has(quantity);
}
