/**
 * Flue gas leaves the exchanger no colder than the water that enters it. At the boiler's own port, held at high
 * fire, more than a few degrees below return is a sensor, a unit or two fields swapped.
 */
import { type MistakeRule, mistakeFinding } from './mistakeFinding.ts';

/** Sensors, places and the moment of reading differ by this much. */
const BELOW_RETURN_K = 5;
/** At low fire and in a long vent the gas may well cool below the return of a moment ago. */
const FIRING_POINT = 'high';

export const flueBelowReturn: MistakeRule = {
  row: 19,
  find: (context) =>
    context.rows.flatMap((row) => {
      const flue = row.get('flueGasC');
      const returned = row.near('returnC');
      if (!flue || !returned || row.point !== FIRING_POINT || returned.value - flue.value <= BELOW_RETURN_K) return [];
      return [
        mistakeFinding(
          {
            code: 'flue-below-return',
            about: [flue, returned],
            from: 'physics',
            rule: 'flue gas at high fire is not more than 5 K below return',
            ask: 'the flue probe at the boiler’s own port, and return: sensor, unit or swapped?',
          },
          context,
        ),
      ];
    }),
};
