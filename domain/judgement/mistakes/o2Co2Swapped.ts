/** O2 and CO2 typed in each other's box. Blind where both are nearly equal (7.5/7.5 on natural gas). */
import { change, type MistakeRule, mistakeFinding } from './mistakeFinding.ts';
import { fits, foInputs, oddPairs } from './oddPairs.ts';

export const o2Co2Swapped: MistakeRule = {
  row: 1,
  find: (context) =>
    oddPairs(context)
      .filter((pair) => fits(pair, context.fuel, pair.co2.value, pair.o2.value))
      .map((pair) =>
        mistakeFinding(
          {
            code: 'o2-co2-swapped',
            about: [pair.o2, pair.co2],
            from: 'physics',
            rule: 'Fo = (20.9 − O₂) / CO₂ is outside this fuel’s band, and inside it the other way round',
            ask: 'O₂ and CO₂ on the analyser’s screen: swapped?',
            inputs: foInputs(pair),
            suggestions: [change('o2-co2-swapped', [pair.o2, pair.co2.value], [pair.co2, pair.o2.value])],
          },
          context,
        ),
      ),
};
