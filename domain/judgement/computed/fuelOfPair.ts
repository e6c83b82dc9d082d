/**
 * The CO₂max that a pair of O₂ and CO₂ stands for: it tells the fuel the analyser was set to, which works one of the two out
 * from the other, and never the fuel that burned.
 */

import { SITE_FUELS } from '../../combustion/fuels.ts';
import { co2MaxOfPair } from '../../combustion/o2Co2.ts';
import { FUELS } from '../../procedure/modelSheet.ts';
import type { Finding } from '../finding.ts';
import { foOf } from '../mistakes/oddPairs.ts';
import { orNull } from '../orNull.ts';
import type { RunContext } from '../runContext.ts';
import { computedFinding, plusMinusOf } from './computedFinding.ts';

export function fuelOfPair(context: RunContext): readonly Finding[] {
  return [...context.firingPoints].flatMap((point) => {
    const row = context.lastRow(point, ['o2DryVolPct', 'co2DryVolPct']);
    const [o2, co2] = [row?.get('o2DryVolPct'), row?.get('co2DryVolPct')];
    if (o2 === undefined || co2 === undefined) return [];
    const formula = (o2DryVolPct = 0, co2DryVolPct = 0) => orNull(co2MaxOfPair({ o2DryVolPct, co2DryVolPct }));
    const value = formula(o2.value, co2.value);
    if (value === null) return [];
    const coPpm = row?.get('coPpm')?.value ?? 0;
    const fuels = FUELS.filter(
      (fuel) => foOf(SITE_FUELS[fuel], o2.value, co2.value, coPpm)?.isInsideTightBand === true,
    );
    return [
      computedFinding(
        {
          name: 'co2-max',
          point,
          from: [o2, co2],
          formula: 'CO₂ / (1 − O₂ / 20.9)',
          unit: '%',
          value,
          plusMinus: plusMinusOf(formula, [o2, co2]),
          basis: { inputs: { analyserSetTo: fuels.join(', ') || 'none of the fuels known here' } },
        },
        context,
      ),
    ];
  });
}
