/**
 * Heat input by timing the meter against the rating this site may burn by the sheet's altitude rule. A second either way
 * on the stopwatch is part of the reading: a timing too short to tell the input from the rating says so.
 */
import { siteRatingKw } from '../../gas/altitudeRule.ts';
import { deviationFromRating, gasInput } from '../../gas/gasInput.ts';
import type { Finding } from '../finding.ts';
import { againstLimit } from '../limits/againstLimit.ts';
import type { RunContext } from '../runContext.ts';
import { cannotCompute, computedFinding } from './computedFinding.ts';
import { altitudeRuleInWords, meteredVolumeFactor, meterReading } from './meterReading.ts';

const NAME = 'clocked-input';
const FORMULA = 'input = 3600 · turns · dial / seconds · volume factor · heating value, gross / 3.6';

export function clockedInput(context: RunContext): readonly Finding[] {
  const meter = meterReading(context);
  const { dial, turns, seconds, read } = meter;
  if (dial === undefined && turns === undefined && seconds === undefined) return [];
  const missing = [
    ...(dial === undefined ? ['the dial’s size'] : []),
    ...(turns === undefined ? ['turns timed'] : []),
    ...(seconds === undefined ? ['the time'] : []),
    ...(meter.heatingValueMjPerM3 === null ? ['the heating value'] : []),
  ];
  const common = { name: NAME, point: null, from: read, formula: FORMULA };
  const { heatingValueMjPerM3 } = meter;
  if (!dial || !turns || !seconds || heatingValueMjPerM3 === null) {
    return [cannotCompute({ ...common, missing }, context)];
  }
  const volume = meteredVolumeFactor(context);
  const measured = gasInput({
    timing: { dialM3: dial.value, turns: turns.value, elapsedS: seconds.value },
    volumeFactor: volume.factor,
    heatingValueMjPerM3,
    basis: 'gross',
  });
  if (!measured.ok)
    return [cannotCompute({ ...common, missing: ['a dial, turns and a time that are possible'] }, context)];
  const { inputKw, lowestKw, highestKw, isLongEnough } = measured.value;
  const inputs = {
    heatingValueMjPerM3,
    heatingValueSource: meter.heatingValueSource,
    volumeFactor: volume.factor,
    volumeFactorHow: volume.how,
    altitudeRule: altitudeRuleInWords(context.sheet.altitude),
  };
  const result = { unit: 'kW', value: inputKw, plusMinus: (highestKw - lowestKw) / 2 };
  const rating = siteRating(meter.ratedInputKwGross, context);
  if (typeof rating === 'string') {
    const basis = { inputs, result };
    return [cannotCompute({ ...common, basis, missing: [rating] }, context)];
  }
  const share = context.sheet.inputTolerancePct / 100;
  const bounds = { min: rating * (1 - share), max: rating * (1 + share), edge: 0, severity: 'outside' as const };
  const against = againstLimit({ value: inputKw, lowest: lowestKw, highest: highestKw }, bounds);
  const deviation = deviationFromRating({ measured: measured.value, siteRatingKw: rating });
  const isTooShort = !isLongEnough && deviation.ok && deviation.value.isRatingInsideInterval;
  return [
    computedFinding(
      {
        ...common,
        ...result,
        verdict: isTooShort ? 'cannot-tell-apart' : against.verdict,
        blocks: against.verdict === 'outside' || (!against.isNominallyInside && !isTooShort) ? ['leaving'] : [],
        basis: {
          from: 'sheet',
          sheet: { sheetId: context.sheet.sheetId, revision: context.sheet.revision },
          source: 'basis' in context.sheet.altitude ? context.sheet.altitude.basis : null,
          limit: { quantity: 'ratedInputKw', point: null, min: bounds.min, max: bounds.max, severity: 'outside' },
          inputs: {
            ...inputs,
            siteRatingKw: rating,
            ...(deviation.ok
              ? {
                  deviationPct: deviation.value.deviationPct,
                  lowestPct: deviation.value.lowestPct,
                  highestPct: deviation.value.highestPct,
                }
              : {}),
          },
        },
        missing: isTooShort ? ['a longer timing: two turns or two minutes'] : [],
      },
      context,
    ),
  ];
}

/** In kW, or what is missing in words. */
export function siteRating(ratedInputKwGross: number | null, context: RunContext): number | string {
  if (ratedInputKwGross === null) return 'the rated input from the plate';
  const { altitude } = context.sheet;
  const { altitudeM } = context.record.site;
  if (altitudeM === null && altitude.method !== 'no-derate') return 'the site’s altitude';
  const rating = siteRatingKw({ ratedInputKw: ratedInputKwGross, rule: altitude, elevationM: altitudeM ?? 0 });
  if (rating.ok) return rating.value;
  switch (rating.error.code) {
    case 'altitude-rule-not-on-sheet':
      return 'a derate rule: none is on the sheet; ask the maker';
    case 'altitude-beyond-rule':
      return 'a derate rule for this altitude: ask the maker';
    case 'out-of-range':
      return 'a rated input and an altitude that are possible';
  }
}
