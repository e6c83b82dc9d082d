/**
 * Properties of the pure gases a fuel gas is mixed from, as data.
 *
 * Units    molar mass g/mol; molar heating value (water liquid) kJ/mol; summation factor s = √(1 − Z), 1/√(101.325 kPa)
 * Source   ISO 6976:2016 tables 1 (molar mass), 2 (summation factors) and 3 (heating values), read in an open-source
 *          copy of the tables; latent heat of water and Z of dry air from its tables A.5 and A.4
 * Checked  tests/checks/combustion/gasComponents.test.ts (the printed table, formation enthalpies, atomic masses)
 */
import type { CombustionTemperature, MeteringTemperature } from './referenceState.ts';

export type GasComponent = {
  readonly atoms: { readonly c: number; readonly h: number; readonly o: number; readonly n: number };
  readonly molarMassGPerMol: number;
  readonly hhvKjPerMol: Readonly<Record<CombustionTemperature, number>>;
  readonly summationFactor: Readonly<Record<MeteringTemperature, number>>;
};

function component(
  [c, h, o, n]: readonly [number, number, number, number],
  molarMassGPerMol: number,
  [hhv15C, hhv60F, hhv25C]: readonly [number, number, number],
  [s15C, s60F]: readonly [number, number],
): GasComponent {
  return {
    atoms: { c, h, o, n },
    molarMassGPerMol,
    hhvKjPerMol: { '15 °C': hhv15C, '60 °F': hhv60F, '25 °C': hhv25C },
    summationFactor: { '15 °C': s15C, '60 °F': s60F },
  };
}

export const GAS_COMPONENTS = {
  methane: component([1, 4, 0, 0], 16.042, [891.51, 891.46, 890.58], [0.04452, 0.04437]),
  ethane: component([2, 6, 0, 0], 30.069, [1562.14, 1562.06, 1560.69], [0.0919, 0.0916]),
  propane: component([3, 8, 0, 0], 44.096, [2221.1, 2220.99, 2219.17], [0.1344, 0.134]),
  nButane: component([4, 10, 0, 0], 58.122, [2879.76, 2879.63, 2877.4], [0.184, 0.1834]),
  iButane: component([4, 10, 0, 0], 58.122, [2870.58, 2870.45, 2868.2], [0.1722, 0.1717]),
  nPentane: component([5, 12, 0, 0], 72.149, [3538.6, 3538.45, 3535.77], [0.2361, 0.2354]),
  iPentane: component([5, 12, 0, 0], 72.149, [3531.68, 3531.52, 3528.83], [0.2251, 0.2244]),
  nHexane: component([6, 14, 0, 0], 86.175, [4198.24, 4198.06, 4194.95], [0.3001, 0.299]),
  propylene: component([3, 6, 0, 0], 42.08, [2059.43, 2059.35, 2058.02], [0.1267, 0.1263]),
  hydrogen: component([0, 2, 0, 0], 2.016, [286.15, 286.13, 285.83], [-0.01, -0.01]),
  carbonMonoxide: component([1, 0, 1, 0], 28.01, [282.91, 282.91, 282.98], [0.0217, 0.0215]),
  nitrogen: component([0, 0, 0, 2], 28.013, [0, 0, 0], [0.017, 0.0169]),
  carbonDioxide: component([1, 0, 2, 0], 44.01, [0, 0, 0], [0.0752, 0.0749]),
  oxygen: component([0, 0, 2, 0], 31.999, [0, 0, 0], [0.0276, 0.0275]),
} as const satisfies Record<string, GasComponent>;

export type GasComponentKey = keyof typeof GAS_COMPONENTS;

export const GAS_COMPONENT_KEYS = Object.keys(GAS_COMPONENTS) as readonly GasComponentKey[];

export const LATENT_HEAT_OF_WATER_KJ_PER_MOL: Readonly<Record<CombustionTemperature, number>> = {
  '15 °C': 44.431,
  '60 °F': 44.408,
  '25 °C': 44.013,
};

export const COMPRESSIBILITY_OF_DRY_AIR: Readonly<Record<MeteringTemperature, number>> = {
  '15 °C': 0.999595,
  '60 °F': 0.999601,
};
