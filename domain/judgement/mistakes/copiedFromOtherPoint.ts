/** Inside one run: high and low fire identical to the digit. Across jobs see `copiedReadings`. */
import type { QuantityKey } from '../../quantity/quantities.ts';
import type { Measured } from '../measured.ts';
import { type MistakeRule, mistakeFinding } from './mistakeFinding.ts';

const COMPARED: readonly QuantityKey[] = ['o2DryVolPct', 'co2DryVolPct', 'coPpm', 'flueGasC', 'supplyC', 'returnC'];
/** Two rates may share a rounded O2, hardly also CO and the flue temperature. */
const LEAST_COMPARED = 3;

export const copiedFromOtherPoint: MistakeRule = {
  row: 24,
  find: (context) => {
    const points = context.sheet.firingPoints.map(({ key }) => key);
    return points.flatMap((point, index) =>
      points.slice(index + 1).flatMap((other) => {
        const pairs = COMPARED.flatMap((quantity) => {
          const [one, another] = [context.latest(quantity, point), context.latest(quantity, other)];
          return one && another ? [[one, another] as const] : [];
        });
        if (pairs.length < LEAST_COMPARED || !pairs.every(([one, another]) => one.value === another.value)) return [];
        const about: readonly Measured[] = pairs.flat();
        return [
          mistakeFinding(
            {
              code: 'copied-readings',
              about,
              from: 'practice',
              rule: 'every quantity is identical at both firing points',
              ask: 'were both firing points read?',
            },
            context,
          ),
        ];
      }),
    );
  },
};
