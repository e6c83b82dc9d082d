import { barToPsi, psiToBar } from '../../quantity/conversions.ts';
import type { BarGauge } from '../../quantity/units.ts';

/** Where the system stands decides which customs its pressures follow. */
export type PressurePractice = 'europe' | 'north-america';

export type PressureCustoms = {
  /** Left over at the highest point of a cold system. */
  readonly marginBar: { readonly usual: readonly [least: number, most: number]; readonly default: number };
  readonly marginBasis: string;
  readonly usualColdFillBarG: readonly [least: BarGauge, most: BarGauge];
  readonly coldFillBasis: string;
  readonly reliefSettingBarG: BarGauge;
  readonly reliefBasis: string;
};

/**
 * What is customary on each side of the ocean; the maker's sheet wins.
 *
 * Source   as each row says; 30 psi is 2.07 bar, not 3 bar
 */
export const PRESSURE_CUSTOMS: Record<PressurePractice, PressureCustoms> = {
  europe: {
    marginBar: { usual: [0.2, 0.3], default: 0.3 },
    marginBasis: 'common practice, no source',
    usualColdFillBarG: [1.0, 1.5],
    coldFillBasis: 'common practice, no source',
    reliefSettingBarG: 3,
    reliefBasis: 'common practice, no source',
  },
  'north-america': {
    marginBar: { usual: [psiToBar(4), psiToBar(5)], default: psiToBar(4) },
    marginBasis: 'trade training pages on cold static fill; 5 psi is taught too',
    usualColdFillBarG: [psiToBar(12), psiToBar(12)],
    coldFillBasis: 'factory setting of fill valves: 12 psi',
    reliefSettingBarG: psiToBar(30),
    reliefBasis: 'trade pages; set at or below the boiler’s maximum allowable working pressure',
  },
};

/** Smallest pressure a domestic circulator wants at its inlet. Common practice, from memory. */
export const CIRCULATOR_INLET_MINIMUM: readonly { readonly waterC: number; readonly inletBarG: BarGauge }[] = [
  { waterC: 75, inletBarG: 0.05 },
  { waterC: 95, inletBarG: 0.3 },
];

/**
 * Share over the maximum allowable working pressure to which a relief valve must hold the rise, for boilers of
 * 30 psi or less: 12 NYCRR 4-5.3.
 */
export function reliefRiseLimitPct(boiler: { readonly maximumAllowableBarG: BarGauge }): number | undefined {
  // Compared in psi with a hair of room, so that 30 psi that went through bar is still 30 psi.
  return barToPsi(boiler.maximumAllowableBarG) <= 30.001 ? 20 : undefined;
}
