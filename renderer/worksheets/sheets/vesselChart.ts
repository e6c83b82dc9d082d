/** System pressure while the water heats up, as this vessel lets it rise, under the lines it should stay below. */
import { liquidExpansion } from '../../../domain/hydronics/fluid/liquidExpansion.ts';
import type { SystemFluid } from '../../../domain/hydronics/fluid/systemFluid.ts';
import { vesselHotPressure } from '../../../domain/hydronics/vessel/vesselGas.ts';
import type { OutOfRange, Result } from '../../../domain/result.ts';
import { type Chart, type ChartMark, curveOver } from '../chart/chart.ts';
import { SYSTEM_PRESSURE, TEMPERATURE } from '../core/measures.ts';
import type { Worked } from '../core/worked.ts';

type Vessel = {
  readonly vesselVolumeL: number;
  readonly preChargeBarG: number;
  readonly coldPressureBarG: number;
  readonly systemVolumeL: number;
  readonly coldC: number;
  readonly fluid: SystemFluid;
};

/** `vessel` must hold all it takes; without it there is no curve to draw. */
export function vesselChart(input: {
  readonly vessel: Worked<Vessel>;
  readonly upToC: number;
  readonly highestNormalBarG: Worked<number>;
  readonly reliefSettingBarG: Worked<number>;
  readonly marks: readonly ChartMark[];
}): Chart | null {
  const { vessel, upToC, highestNormalBarG, reliefSettingBarG, marks } = input;
  if (!vessel.ok || !(upToC > vessel.value.coldC)) return null;
  const { coldC } = vessel.value;
  const points = curveOver(coldC, upToC, (hotC) => {
    const hot = pressureAt(vessel.value, hotC);
    // Far above the relief valve there is nothing to see.
    return hot.ok && reliefSettingBarG.ok && hot.value > 2 * reliefSettingBarG.value ? { ok: false } : hot;
  });
  if (points.length < 2) return null;
  const bounds = [
    { label: 'relief setting', at: reliefSettingBarG },
    { label: 'highest normal', at: highestNormalBarG },
  ].flatMap(({ label, at }) =>
    at.ok
      ? [{ label, points: [[coldC, at.value] as const, [upToC, at.value] as const], weight: 'bound' as const }]
      : [],
  );
  return {
    title: 'Pressure while the system heats up',
    x: { label: 'Water', measure: TEMPERATURE },
    y: { label: 'Gauge', measure: SYSTEM_PRESSURE },
    curves: [...bounds, { label: 'this vessel', points, weight: 'main' }],
    marks,
  };
}

export function pressureAt(vessel: Vessel, hotC: number): Result<number, OutOfRange> {
  const { fluid, coldC, systemVolumeL } = vessel;
  const expansion = liquidExpansion({ fluid, coldC, hotC });
  if (!expansion.ok) return expansion;
  return vesselHotPressure({ ...vessel, expandedWaterL: expansion.value * systemVolumeL });
}
