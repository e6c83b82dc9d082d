/** Degrees Celsius typed where Fahrenheit is asked for: a hot system that would be colder than the air around it. */
import { celsiusToFahrenheit } from '../../quantity/conversions.ts';
import type { QuantityKey } from '../../quantity/quantities.ts';
import type { Measured } from '../measured.ts';
import type { RunContext } from '../runContext.ts';
import { change, type MistakeRule, mistakeFinding } from './mistakeFinding.ts';

/** Colder than this while the burner runs steadily, or at a tap, is no heating: floors start at about 25 °C. */
const COLDEST_C: Readonly<Partial<Record<QuantityKey, number>>> = {
  supplyC: 22,
  returnC: 17,
  flueGasC: 22,
  mixedOutletC: 30,
  hotOutletC: 30,
  storeC: 30,
};
/** What the same number must be in °C to be believed. */
const USUAL_C: readonly [number, number] = [20, 95];

export const celsiusInFahrenheit: MistakeRule = {
  row: 9,
  find: (context) =>
    Object.entries(COLDEST_C).flatMap(([quantity, coldestC]) =>
      context
        .all(quantity as QuantityKey)
        .filter((one) => isWhileHeating(one, context) && isCelsiusNumber(one, coldestC))
        .map((one) => {
          const meantC = celsiusToFahrenheit(one.value);
          return mistakeFinding(
            {
              code: 'celsius-in-fahrenheit',
              about: [one],
              from: 'practice',
              rule: `typed in °F it is below ${coldestC} °C while heating; the same number in °C is usual`,
              ask: '°C or °F?',
              suggestions: [change('celsius-in-fahrenheit', [one, meantC])],
            },
            context,
          );
        }),
    ),
};

/** At a firing point the burner runs; what is read at a tap is hot water whenever it is read. */
function isWhileHeating(one: Measured, context: RunContext): boolean {
  const isTap = one.quantity === 'mixedOutletC' || one.quantity === 'hotOutletC' || one.quantity === 'storeC';
  return isTap || (one.point !== null && context.firingPoints.has(one.point));
}

/** The number as typed, in °F, is what a thermometer in °C would have shown. */
function isCelsiusNumber(one: Measured, coldestC: number): boolean {
  if (one.reading.typedUnit !== '°F' || one.value >= coldestC) return false;
  const typed = celsiusToFahrenheit(one.value);
  return typed >= USUAL_C[0] && typed <= USUAL_C[1];
}
