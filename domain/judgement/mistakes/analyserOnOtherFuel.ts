/**
 * The analyser is set to another fuel. The pair tells what the analyser was set to, not what burned; so it is read
 * again with the right setting and never converted.
 */
import { SITE_FUELS } from '../../combustion/fuels.ts';
import { FUELS } from '../../procedure/modelSheet.ts';
import { type MistakeRule, mistakeFinding } from './mistakeFinding.ts';
import { fits, foInputs, oddPairs } from './oddPairs.ts';

export const analyserOnOtherFuel: MistakeRule = {
  row: 2,
  find: (context) =>
    oddPairs(context).flatMap((pair) => {
      const others = FUELS.filter(
        (fuel) => fuel !== context.record.fuel && fits(pair, SITE_FUELS[fuel], pair.o2.value, pair.co2.value),
      );
      if (others.length === 0) return [];
      return [
        mistakeFinding(
          {
            code: 'analyser-on-other-fuel',
            about: [pair.o2, pair.co2],
            from: 'physics',
            rule: 'Fo = (20.9 − O₂) / CO₂ is outside this fuel’s band and inside another’s',
            ask: 'the analyser’s fuel setting; then the reading again',
            inputs: { ...foInputs(pair), fuelOfThePair: others.join(', ') },
          },
          context,
        ),
      ];
    }),
};
