/** Flue gas against the highest temperature the vent's material bears, as the sheet or the vent maker has it. */
import { buildFinding } from '../buildFinding.ts';
import type { Finding } from '../finding.ts';
import { judgedReading } from '../limits/judgedValue.ts';
import type { RunContext } from '../runContext.ts';
import { VENT_CEILING } from '../safetyCeilings.ts';
import { judgeCeiling } from './judgeCeilings.ts';

export function judgeVentTemperature(context: RunContext): readonly Finding[] {
  const { ventMaxC } = context.sheet.appliance;
  return context.all('flueGasC').flatMap((flue) => {
    const value = judgedReading(flue, context);
    if (ventMaxC !== null) {
      return [
        judgeCeiling(value, {
          key: 'vent-material',
          quantity: 'flueGasC',
          regions: 'everywhere',
          max: ventMaxC,
          edge: 0,
          severity: 'stop',
          blocks: ['firing', 'leaving', 'registration'],
          makeSafe: VENT_CEILING.makeSafe,
          source: VENT_CEILING.source,
        }),
      ];
    }
    if (flue.highest <= VENT_CEILING.harmlessBelowC) return [];
    return [
      buildFinding({
        subject: `ceiling:vent-material${flue.point === null ? '' : `@${flue.point}`}`,
        readingId: flue.reading.readingId,
        verdict: 'cannot-judge',
        proof: value.proof,
        basis: { ...value.basis, from: 'ceiling', source: VENT_CEILING.source },
        missing: ['the highest temperature the vent’s material bears'],
      }),
    ];
  });
}
