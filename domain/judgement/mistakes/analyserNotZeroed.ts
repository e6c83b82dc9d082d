/** No clean-air check before the flue was read, or one that failed: an analyser zeroed in dirty air reads low. */
import { proofOf } from '../proof/proofOf.ts';
import { FLUE_GAS } from '../quantityGroups.ts';
import { type MistakeRule, mistakeFinding } from './mistakeFinding.ts';

export const analyserNotZeroed: MistakeRule = {
  row: 21,
  find: (context) => {
    const about = context.measured.filter((one) => {
      if (!FLUE_GAS.has(one.quantity)) return false;
      const proof = proofOf([one], context);
      return !proof.proven && proof.because.includes('instrument-not-zeroed');
    });
    if (about.length === 0) return [];
    const checks = (['freshAirO2VolPct', 'freshAirCoPpm', 'freshAirCo2VolPct'] as const).flatMap(
      (quantity) => context.latest(quantity) ?? [],
    );
    return [
      mistakeFinding(
        {
          code: 'analyser-not-zeroed',
          about: [...checks, ...about],
          from: 'practice',
          rule: 'in clean outside air O₂ 20.9 ± 0.3 %, CO 0–3 ppm, CO₂ up to 0.2 %, before the readings',
          ask: 'the analyser zeroed in clean outside air, then the readings again',
          blocks: ['leaving'],
        },
        context,
      ),
    ];
  },
};
