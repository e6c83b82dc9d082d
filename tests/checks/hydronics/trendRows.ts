/** Two visits compared: M1–M3. */
import { liquidExpansion } from '../../../domain/hydronics/fluid/liquidExpansion.ts';
import { WATER } from '../../../domain/hydronics/fluid/systemFluid.ts';
import { flowFromOutput } from '../../../domain/hydronics/output/flowFromOutput.ts';
import { pressureDropRatio } from '../../../domain/hydronics/pipes/hydraulicIndex.ts';
import { effectivePreCharge } from '../../../domain/hydronics/vessel/vesselGas.ts';
import { unwrap } from '../../../domain/result.ts';
import type { CheckRow } from '../checkRow.ts';
import { computed, percent } from './rowKinds.ts';

const ENERGY = 'energy balance on IAPWS R7-97(2012)';

function twentyKwLPerH(deltaTK: number): number {
  const load = { outputKw: 20, meterC: 60, supplyC: 60 + deltaTK, returnC: 60, fluid: WATER };
  return 60 * unwrap(flowFromOutput(load));
}

export const trendRows: readonly CheckRow[] = [
  computed('M1.before', '20 kW, return 60 °C, ΔT 15 K', 'flow, L/h', 1165, percent(0.5), ENERGY, () =>
    twentyKwLPerH(15),
  ),
  computed('M1.after', '20 kW, return 60 °C, ΔT 20 K', 'flow, L/h', 874, percent(0.5), ENERGY, () => twentyKwLPerH(20)),
  computed(
    'M1.change',
    'between the two',
    'flow change, %',
    -25,
    0.5,
    ENERGY,
    () => 100 * (twentyKwLPerH(20) / twentyKwLPerH(15) - 1),
  ),
  computed('M2', 'flow −25 %, unchanged circuit', 'pressure-drop ratio', 0.5625, 1e-12, 'square law', () =>
    unwrap(pressureDropRatio({ flowBeforeLPerMin: 20, flowAfterLPerMin: 15 })),
  ),
  computed(
    'M3',
    '12 L, 90 L, 10 → 70 °C, cold 1.0, hot 1.78 bar',
    'effective pre-charge, bar',
    0.2,
    0.05,
    'inverse of E11',
    () =>
      unwrap(
        effectivePreCharge({
          vesselVolumeL: 12,
          coldPressureBarG: 1,
          hotPressureBarG: 1.78,
          expandedWaterL: 90 * unwrap(liquidExpansion({ fluid: WATER, coldC: 10, hotC: 70 })),
        }),
      ),
  ),
];
