/** An absolute pressure typed as gauge: one atmosphere too much, so close to the relief valve that no fill is. */
import { PA_PER_BAR, STANDARD_ATMOSPHERE_PA } from '../../quantity/conversions.ts';
import { change, type MistakeRule, mistakeFinding } from './mistakeFinding.ts';

const ATMOSPHERE_BAR = STANDARD_ATMOSPHERE_PA / PA_PER_BAR;
/** A cold system filled to more than this share of its relief setting has no room left to get hot. */
const FULL_FROM_SHARE_OF_RELIEF = 0.65;
/** Where a cold fill is seen after the atmosphere is taken off. */
const USUAL_COLD_BAR: readonly [number, number] = [0.4, 2];

export const absoluteNotGauge: MistakeRule = {
  row: 12,
  find: (context) => {
    const relief = context.latest('reliefSettingBarG')?.value;
    if (relief === undefined) return [];
    return context
      .all('systemPressureBarG')
      .filter(({ point, value }) => {
        const gauge = value - ATMOSPHERE_BAR;
        // Above the relief setting the rule for units asks: that is more than one atmosphere off.
        const isFull = value > relief * FULL_FROM_SHARE_OF_RELIEF && value <= Math.max(relief, 2.1);
        return point === 'cold' && isFull && gauge >= USUAL_COLD_BAR[0] && gauge <= USUAL_COLD_BAR[1];
      })
      .map((cold) =>
        mistakeFinding(
          {
            code: 'absolute-not-gauge',
            about: [cold],
            from: 'practice',
            rule: 'cold above 65 % of the relief setting, and one atmosphere less is a usual fill',
            ask: 'does the gauge show absolute pressure (bara, psia)?',
            inputs: { reliefSettingBarG: relief },
            suggestions: [change('absolute-not-gauge', [cold, cold.value - ATMOSPHERE_BAR])],
          },
          context,
        ),
      );
  },
};
