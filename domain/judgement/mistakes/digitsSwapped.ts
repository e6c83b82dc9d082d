/**
 * Digits change places when a number is carried from one line or screen to another. Found where the number can be
 * computed from raw ones: the gas rate from the timing, CO2 from O2, supply minus return.
 */
import { meteredRate } from '../../gas/meterTiming.ts';
import { meterReading } from '../computed/meterReading.ts';
import type { Finding } from '../finding.ts';
import type { Measured } from '../measured.ts';
import type { RunContext } from '../runContext.ts';
import { change, type MistakeRule, mistakeFinding } from './mistakeFinding.ts';
import { fits, foInputs, oddPairs } from './oddPairs.ts';
import { typedNumber } from './otherUnit.ts';
import { transpositions } from './transpositions.ts';

/** A rate worked out by hand agrees to the last digit carried along. */
const RATE_AGREES_WITHIN_SHARE = 0.02;
/** Displays that refresh at different moments differ by this much. */
const DELTA_T_AGREES_WITHIN_K = 1.5;

export const digitsSwapped: MistakeRule = {
  row: 17,
  find: (context) => [...gasRate(context), ...flueGas(context), ...deltaT(context)],
};

function gasRate(context: RunContext): readonly Finding[] {
  const typed = context.latest('typedGasRateM3PerH');
  const { dial, turns, seconds } = meterReading(context);
  if (!typed || !dial || !turns || !seconds) return [];
  const rate = meteredRate({ dialM3: dial.value, turns: turns.value, elapsedS: seconds.value });
  if (!rate.ok) return [];
  const computed = rate.value.rateM3PerH;
  const agrees = (value: number) => Math.abs(value / computed - 1) <= RATE_AGREES_WITHIN_SHARE;
  if (agrees(typed.value)) return [];
  const meant = transposed(typed).filter(agrees);
  return [
    mistakeFinding(
      {
        code: 'digits-swapped',
        about: [typed, dial, turns, seconds],
        from: 'physics',
        rule: 'gas rate = 3600 · turns · dial / seconds, within 2 %',
        ask: meant.length > 0 ? 'digits swapped?' : 'the gas rate: work it out from the timing again',
        inputs: { computedM3PerH: computed },
        suggestions: [change('digits-swapped', [typed, meant[0] ?? computed])],
      },
      context,
    ),
  ];
}

function flueGas(context: RunContext): readonly Finding[] {
  return oddPairs(context).flatMap((pair) => {
    const { o2, co2 } = pair;
    const meant = [
      ...transposed(o2)
        .filter((value) => fits(pair, context.fuel, value, co2.value))
        .map((value) => [o2, value] as const),
      ...transposed(co2)
        .filter((value) => fits(pair, context.fuel, o2.value, value))
        .map((value) => [co2, value] as const),
    ];
    if (meant.length === 0) return [];
    return [
      mistakeFinding(
        {
          code: 'digits-swapped',
          about: [o2, co2],
          from: 'physics',
          rule: 'Fo = (20.9 − O₂) / CO₂ is outside this fuel’s band; with two digits exchanged it is inside',
          ask: 'O₂ and CO₂ on the analyser’s screen: digits swapped?',
          inputs: foInputs(pair),
          suggestions: meant.map((one) => change('digits-swapped', one)),
        },
        context,
      ),
    ];
  });
}

function deltaT(context: RunContext): readonly Finding[] {
  return context.rows.flatMap((row) => {
    const typed = row.get('deltaTK');
    const supply = row.near('supplyC');
    const returned = row.near('returnC');
    if (!typed || !supply || !returned) return [];
    const computed = supply.value - returned.value;
    const agrees = (value: number) => Math.abs(value - computed) <= DELTA_T_AGREES_WITHIN_K;
    if (agrees(typed.value)) return [];
    const inOthers = [
      ...transposed(supply)
        .filter((value) => Math.abs(value - returned.value - typed.value) <= DELTA_T_AGREES_WITHIN_K)
        .map((value) => [supply, value] as const),
      ...transposed(returned)
        .filter((value) => Math.abs(supply.value - value - typed.value) <= DELTA_T_AGREES_WITHIN_K)
        .map((value) => [returned, value] as const),
    ];
    const meant = [
      ...transposed(typed)
        .filter(agrees)
        .map((value) => [typed, value] as const),
      ...inOthers,
    ];
    return [
      mistakeFinding(
        {
          code: 'digits-swapped',
          about: [typed, supply, returned],
          from: 'physics',
          rule: 'difference = supply − return, within 1.5 K',
          ask: meant.length > 0 ? 'digits swapped?' : 'supply, return and their difference',
          inputs: { computedK: computed },
          suggestions:
            meant.length > 0
              ? meant.map((one) => change('digits-swapped', one))
              : [change('digits-swapped', [typed, computed])],
        },
        context,
      ),
    ];
  });
}

/** In the quantity's own unit; the digits are exchanged as they were typed. */
function transposed(one: Measured): readonly number[] {
  const typed = typedNumber(one);
  if (typed === undefined) return [];
  return transpositions(numberIn(one.reading.typedText)).map((value) => typed.unit.toOwn(value));
}

function numberIn(typedText: string): string {
  return /\d+(?:[.,]\d+)?/.exec(typedText)?.[0] ?? '';
}
