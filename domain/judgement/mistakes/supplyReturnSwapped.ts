/** While the burner fires, supply is hotter than return. */
import { pairOf } from '../sampleRows.ts';
import { exchange, type MistakeRule, mistakeFinding } from './mistakeFinding.ts';

/** Two sensors of one boiler agree to about a degree. */
const SENSORS_AGREE_WITHIN_K = 1;

export const supplyReturnSwapped: MistakeRule = {
  row: 18,
  find: (context) =>
    context.rows.flatMap((row) => {
      const pair = pairOf(row, 'supplyC', 'returnC');
      if (pair === undefined || row.point === null || !context.firingPoints.has(row.point)) return [];
      const [supply, returned] = pair;
      const tolerance = SENSORS_AGREE_WITHIN_K + Math.hypot(supply.plusMinus, returned.plusMinus);
      if (returned.value - supply.value <= tolerance) return [];
      return [
        mistakeFinding(
          {
            code: 'supply-return-swapped',
            about: [supply, returned],
            from: 'physics',
            rule: 'supply is above return while firing',
            ask: 'supply and return: swapped?',
            suggestions: [exchange('supply-return-swapped', supply, returned)],
          },
          context,
        ),
      ];
    }),
};
