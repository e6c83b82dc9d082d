/** A pair of O2 and CO2 that fits neither this fuel nor any mistake with a name: read again. */
import { buildFinding } from '../buildFinding.ts';
import { inputsOf } from '../measured.ts';
import { proofOf } from '../proof/proofOf.ts';
import { analyserOnOtherFuel } from './analyserOnOtherFuel.ts';
import { digitsSwapped } from './digitsSwapped.ts';
import { type MistakeRule, newest } from './mistakeFinding.ts';
import { o2Co2Swapped } from './o2Co2Swapped.ts';
import { foInputs, oddPairs } from './oddPairs.ts';

/** Belongs to the first two rows of the list: the same test, without an explanation. */
export const oddPair: MistakeRule = {
  row: 1,
  find: (context) => {
    if (oddPairs(context).length === 0) return [];
    const explained = new Set(
      [o2Co2Swapped, analyserOnOtherFuel, digitsSwapped].flatMap((rule) =>
        rule.find(context).flatMap((finding) => Object.values(finding.basis.inputs)),
      ),
    );
    return oddPairs(context)
      .filter(({ co2 }) => !explained.has(co2.reading.readingId))
      .map((pair) =>
        buildFinding({
          subject: `pair:o2-co2${pair.o2.point === null ? '' : `@${pair.o2.point}`}`,
          readingId: newest([pair.o2, pair.co2])?.reading.readingId ?? null,
          verdict: 'cannot-judge',
          proof: proofOf([pair.o2, pair.co2], context),
          // Inside the wide published band it may still be the instruments' own error: ask, but do not hold anybody up.
          blocks: pair.fo.isInsideEpaBand ? [] : ['leaving'],
          basis: {
            from: 'physics',
            formula: 'Fo = (20.9 − O₂) / CO₂ is outside this fuel’s band',
            inputs: { ...inputsOf([pair.o2, pair.co2]), ...foInputs(pair) },
          },
          missing: ['O₂ and CO₂ once more: they do not belong together'],
        }),
      );
  },
};
