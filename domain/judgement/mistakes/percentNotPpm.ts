/** CO in percent where ppm are asked for. Analysers show whole ppm; a fraction below one is a percentage. */
import type { QuantityKey } from '../../quantity/quantities.ts';
import { change, type MistakeRule, mistakeFinding } from './mistakeFinding.ts';

const PPM_PER_PCT = 10_000;
const CO: readonly QuantityKey[] = ['coPpm', 'coAirFreePpm', 'roomCoPpm'];

export const percentNotPpm: MistakeRule = {
  row: 4,
  find: (context) =>
    CO.flatMap((quantity) =>
      context
        .all(quantity)
        .filter(({ value }) => value > 0 && value < 1)
        .map((co) =>
          mistakeFinding(
            {
              code: 'percent-not-ppm',
              about: [co],
              from: 'practice',
              rule: 'CO between 0 and 1 ppm: analysers show whole ppm; as a percentage it is 10 000 times as much',
              ask: 'the unit of CO on the analyser’s screen: % or ppm?',
              suggestions: [change('percent-not-ppm', [co, co.value * PPM_PER_PCT])],
            },
            context,
          ),
        ),
    ),
};
