/**
 * A fuel as combustion sees it: what one amount of it (1 mol of gas, 1 kg of oil) needs, leaves and gives off.
 * Made by `gasFuel`, `oilFuel` or `fuelWithSupplierData`; the named ones are in `fuels.ts`.
 */
import type { DryVolPct } from '../quantity/units.ts';
import type { GasComponentKey } from './gasComponents.ts';
import type { CombustionTemperature, MeteringTemperature } from './referenceState.ts';

/** Which published bands apply to the fuel (Fo bands, flue-loss constants). */
export type FuelFamily = 'natural-gas' | 'propane' | 'butane' | 'distillate-oil';

type FuelCommon = {
  readonly name: string;
  readonly family: FuelFamily;
  readonly massGPerAmount: number;
  /** Moles per amount of fuel, complete combustion in dry air. */
  readonly theoreticalO2Mol: number;
  readonly theoreticalAirMol: number;
  readonly co2Mol: number;
  readonly so2Mol: number;
  readonly fuelN2Mol: number;
  readonly waterMol: number;
  /** Dry flue gas without excess air. */
  readonly dryFlueMol: number;
  /** k: dry flue gas over air, both without excess. */
  readonly dryFlueToAirRatio: number;
  readonly co2MaxDryVolPct: DryVolPct;
  /** Higher and lower heating value at 25 °C, the basis of every efficiency here. */
  readonly hhv25CKj: number;
  readonly lhv25CKj: number;
};

export type GasFuel = FuelCommon & {
  readonly kind: 'gas';
  readonly molePct: GasComposition;
  readonly hhvKjPerMol: Readonly<Record<CombustionTemperature, number>>;
  readonly lhvKjPerMol: Readonly<Record<CombustionTemperature, number>>;
  readonly summationFactor: Readonly<Record<MeteringTemperature, number>>;
  /** The supplier's relative density, where given; null means computed from the composition. */
  readonly suppliedRelativeDensity: number | null;
};

export type OilFuel = FuelCommon & { readonly kind: 'oil'; readonly massPct: OilComposition };

export type Fuel = GasFuel | OilFuel;

/** Mole %, as a gas analysis prints it. Not the liquid-volume % of an LPG delivery note. */
export type GasComposition = Readonly<Partial<Record<GasComponentKey, number>>>;

/** Mass %, as an ultimate analysis prints it. */
export type OilComposition = {
  readonly carbon: number;
  readonly hydrogen: number;
  readonly sulphur: number;
  readonly nitrogen: number;
  readonly oxygen: number;
};

export type CompositionError =
  | { readonly code: 'composition-share-out-of-range'; readonly component: string; readonly pct: number }
  | { readonly code: 'composition-does-not-add-up'; readonly sumPct: number }
  | { readonly code: 'composition-does-not-burn' };
