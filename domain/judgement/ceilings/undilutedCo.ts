/**
 * CO whose dilution is not known: air-free CO is never less than CO as measured, so a reading over the ceiling is a stop
 * whatever the O2; below it the O2 is missing.
 */
import { buildFinding } from '../buildFinding.ts';
import type { Finding } from '../finding.ts';
import { judgedReading } from '../limits/judgedValue.ts';
import type { RunContext } from '../runContext.ts';
import { SAFETY_CEILINGS } from '../safetyCeilings.ts';
import { judgeCeiling } from './judgeCeilings.ts';

export function judgeUndilutedCo(
  context: RunContext,
  hasAirFree: (coReadingId: string) => boolean,
): readonly Finding[] {
  const ceiling = SAFETY_CEILINGS.find(({ key }) => key === 'flue-co-air-free');
  if (ceiling === undefined) return [];
  return context.all('coPpm').flatMap((co) => {
    if (hasAirFree(co.reading.readingId)) return [];
    const value = { ...judgedReading(co, context), quantity: 'coAirFreePpm' as const };
    const asMeasured = judgeCeiling(value, ceiling);
    if (asMeasured.verdict === 'stop') return [asMeasured];
    const o2 = context.rowOf(co)?.get('o2DryVolPct');
    return [
      buildFinding({
        subject: asMeasured.subject,
        readingId: co.reading.readingId,
        verdict: 'cannot-judge',
        proof: value.proof,
        blocks: ['leaving'],
        basis: { ...asMeasured.basis, formula: 'CO · 20.9 / (20.9 − O₂)' },
        missing: [o2 === undefined ? 'O₂ of the same sample' : 'O₂ of 15 % or less: read while the burner runs'],
      }),
    ];
  });
}
