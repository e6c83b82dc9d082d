/** The property table of water, W1–W11: every column, and the release's viscosity values. */
import { liquidExpansion } from '../../../domain/hydronics/fluid/liquidExpansion.ts';
import { WATER } from '../../../domain/hydronics/fluid/systemFluid.ts';
import { waterProperties, waterVapourPressure } from '../../../domain/hydronics/fluid/waterProperties.ts';
import { waterViscosity } from '../../../domain/hydronics/fluid/waterViscosity.ts';
import { unwrap } from '../../../domain/result.ts';
import type { CheckRow } from '../checkRow.ts';
import { computed, lastFigure, percent, published } from './rowKinds.ts';

/** t °C, ρ kg/m³, cp kJ/kgK, ρ·cp kJ/m³K, vapour pressure kPa, μ mPa·s, expansion from 10 °C %. */
export const WATER_TABLE = [
  ['W1', 0, 999.84, 4.219, 4219, 0.612, 1.791, null],
  ['W2', 10, 999.7, 4.195, 4194, 1.228, 1.306, 0],
  ['W3', 20, 998.21, 4.185, 4177, 2.339, 1.002, 0.15],
  ['W4', 30, 995.65, 4.18, 4162, 4.247, 0.797, 0.41],
  ['W5', 40, 992.22, 4.179, 4146, 7.384, 0.653, 0.75],
  ['W6', 50, 988.05, 4.18, 4130, 12.351, 0.547, 1.18],
  ['W7', 60, 983.21, 4.183, 4113, 19.946, 0.466, 1.68],
  ['W8', 70, 977.78, 4.188, 4095, 31.201, 0.404, 2.24],
  ['W9', 80, 971.8, 4.196, 4077, 47.415, 0.354, 2.87],
  ['W10', 90, 965.32, 4.205, 4059, 70.182, 0.314, 3.56],
  ['W11', 100, 958.35, 4.217, 4041, 101.418, 0.282, 4.31],
] as const;

const SOURCE = 'IAPWS R7-97(2012) and R12-08(2008)';
const TABLE_4 = 'IAPWS R12-08(2008), Table 4';

export const waterPropertyRows: readonly CheckRow[] = [
  ...WATER_TABLE.flatMap(([id, temperatureC, density, heat, volumetric, vapour, viscosity, expansionPct]) => {
    const inputs = `water, ${temperatureC} °C, ${temperatureC === 100 ? 'saturation' : '0.101325 MPa'}`;
    const properties = () => unwrap(waterProperties({ temperatureC }));
    const rows = [
      computed(`${id}.density`, inputs, 'ρ, kg/m³', density, percent(0.05), SOURCE, () => properties().densityKgPerM3),
      computed(
        `${id}.heat`,
        inputs,
        'cp, kJ/(kg K)',
        heat,
        percent(0.1),
        SOURCE,
        () => properties().specificHeatKjPerKgK,
      ),
      computed(
        `${id}.volumetric`,
        inputs,
        'ρ·cp, kJ/(m³ K)',
        volumetric,
        percent(0.15), // the tolerances of both factors
        SOURCE,
        () => properties().densityKgPerM3 * properties().specificHeatKjPerKgK,
      ),
      computed(`${id}.vapour`, inputs, 'vapour pressure, kPa', vapour, percent(0.5), SOURCE, () =>
        unwrap(waterVapourPressure({ temperatureC })),
      ),
      computed(
        `${id}.viscosity`,
        inputs,
        'μ, mPa s',
        viscosity,
        percent(2),
        SOURCE,
        () => 1000 * properties().viscosityPaS,
      ),
      // Beside the tolerances allowed to an implementation, the figures as printed.
      computed(
        `${id}.density-printed`,
        inputs,
        'ρ, kg/m³',
        density,
        lastFigure(2),
        SOURCE,
        () => properties().densityKgPerM3,
      ),
      computed(
        `${id}.heat-printed`,
        inputs,
        'cp, kJ/(kg K)',
        heat,
        lastFigure(3),
        SOURCE,
        () => properties().specificHeatKjPerKgK,
      ),
      // One unit, not half a one: at 0 °C the formula gives 1.7918 where 1.791 is printed.
      computed(
        `${id}.viscosity-printed`,
        inputs,
        'μ, mPa s',
        viscosity,
        0.001,
        SOURCE,
        () => 1000 * properties().viscosityPaS,
      ),
    ];
    return expansionPct === null
      ? rows
      : [
          ...rows,
          computed(
            `${id}.expansion`,
            inputs,
            'expansion from 10 °C, %',
            expansionPct,
            0.01,
            SOURCE,
            () => 100 * unwrap(liquidExpansion({ fluid: WATER, coldC: 10, hotC: temperatureC })),
          ),
        ];
  }),
  published(
    'VISC-1',
    '298.15 K, 998 kg/m³',
    'μ, µPa s',
    889.7351,
    { relative: 5e-9 },
    TABLE_4,
    () => 1e6 * unwrap(waterViscosity({ temperatureK: 298.15, densityKgPerM3: 998 })),
  ),
  published(
    'VISC-2',
    '373.15 K, 1000 kg/m³',
    'μ, µPa s',
    307.883622,
    { relative: 5e-9 },
    TABLE_4,
    () => 1e6 * unwrap(waterViscosity({ temperatureK: 373.15, densityKgPerM3: 1000 })),
  ),
];
