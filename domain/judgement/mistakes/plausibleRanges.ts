/**
 * What is seen in practice, wide: outside it a number was more likely mistyped than measured. These ranges only raise a
 * question; they are never shown as a limit and never take a maker's place.
 */
import type { FuelKey } from '../../procedure/modelSheet.ts';
import type { QuantityKey } from '../../quantity/quantities.ts';
import type { RunContext } from '../runContext.ts';

export type PlausibleRange = readonly [min: number, max: number];

/**
 * Inlet pressure in mbar. Natural gas 4–14 in. w.c. in North America, 17–25 mbar in Europe; LP 8–14 in. w.c. and
 * 28–50 mbar systems with their tolerance. Maximum seen on plates: 14 in. w.c. for natural gas.
 */
const INLET_MBAR: Readonly<Record<FuelKey, PlausibleRange | null>> = {
  'natural-gas': [9.9, 36],
  propane: [19.5, 58],
  butane: [19.5, 58],
  'heating-oil': null,
};

const AT_APPLIANCE: readonly string[] = ['static', 'dynamic', 'dynamic-all-on'];

/** Gross, MJ/m³: 700–1200 Btu/ft³ for natural gas by place; LP about 2500, butane about 3260 Btu/ft³. */
const HEATING_VALUE_MJ_PER_M3: Readonly<Record<FuelKey, PlausibleRange | null>> = {
  'natural-gas': [26, 45],
  propane: [80, 110],
  butane: [105, 140],
  'heating-oil': null,
};

/** Filled systems; below it a circulator draws air, above it nearly every domestic relief valve is open. */
const SYSTEM_PRESSURE_BAR: PlausibleRange = [0.3, 3.2];

const RANGES: Readonly<Partial<Record<QuantityKey, PlausibleRange>>> = {
  waterPh: [5.5, 11.5],
  inhibitorPct: [0, 12],
  supplyVoltageV: [85, 265],
  hotWaterFlowLPerMin: [1, 80],
  coldInletC: [1, 32],
  reliefSettingBarG: [1, 6.5],
  vesselPreChargeBarG: [0.3, 4],
  flameCurrentUa: [0.1, 80],
};

export function plausibleRange(
  quantity: QuantityKey,
  context: RunContext,
  point: string | null = null,
): PlausibleRange | null {
  switch (quantity) {
    case 'inletPressureMbarG':
      // Elsewhere, before a regulator for instance, any pressure may stand.
      return point === null || AT_APPLIANCE.includes(point) ? INLET_MBAR[context.record.fuel] : null;
    case 'heatingValueMjPerM3':
      return HEATING_VALUE_MJ_PER_M3[context.record.fuel];
    case 'systemPressureBarG': {
      const relief = context.latest('reliefSettingBarG')?.value;
      return [SYSTEM_PRESSURE_BAR[0], Math.max(SYSTEM_PRESSURE_BAR[1], relief ?? 0)];
    }
    default:
      return RANGES[quantity] ?? null;
  }
}

export function isIn(value: number, range: PlausibleRange): boolean {
  return value >= range[0] && value <= range[1];
}

/** Flue gas of a condensing boiler stays below this; only exchangers that condense are known to. */
export const CONDENSING_FLUE_MAX_C = 110;

export function isCondensing(context: RunContext): boolean {
  const { exchanger } = context.sheet.appliance;
  return exchanger === 'stainless' || exchanger === 'aluminium';
}
