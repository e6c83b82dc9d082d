/**
 * How much water the expansion vessel has taken at the hot pressure and can still take before the relief valve opens, as a
 * share of its volume: why a valve weeps under a vessel that is charged too high, whatever the vessel's size.
 */
import { vesselWaterHeld } from '../../hydronics/vessel/vesselGas.ts';
import type { Finding } from '../finding.ts';
import { orNull } from '../orNull.ts';
import type { RunContext } from '../runContext.ts';
import { computedFinding, plusMinusOf } from './computedFinding.ts';

export function vesselTakes(context: RunContext): readonly Finding[] {
  const charge = context.latest('vesselPreChargeBarG');
  const hot = context.latest('systemPressureBarG', 'hot');
  const relief = context.latest('reliefSettingBarG');
  if (charge === undefined || hot === undefined || relief === undefined) return [];
  const value = sharePct(charge.value, hot.value);
  const atReliefPct = sharePct(charge.value, relief.value);
  if (value === null || atReliefPct === null) return [];
  const before = context.replaced.findLast(({ quantity }) => quantity === 'vesselPreChargeBarG');
  const beforeAtReliefPct = before === undefined ? null : sharePct(before.value, relief.value);
  return [
    computedFinding(
      {
        name: 'vessel-takes',
        point: 'hot',
        from: [charge, hot, relief],
        formula: '1 − (pre-charge + 1.013) / (pressure + 1.013), of the vessel’s volume; nothing below the pre-charge',
        unit: '%',
        value,
        plusMinus: plusMinusOf((chargeBarG = 0, hotBarG = 0) => sharePct(chargeBarG, hotBarG), [charge, hot]),
        basis: {
          inputs: {
            atReliefPct,
            ...(before === undefined || beforeAtReliefPct === null
              ? {}
              : { preChargeBeforeBarG: before.value, beforeAtReliefPct }),
          },
        },
      },
      context,
    ),
  ];
}

function sharePct(preChargeBarG: number, pressureBarG: number): number | null {
  return orNull(vesselWaterHeld({ vesselVolumeL: 100, preChargeBarG, pressureBarG }));
}
