/** IF97 verification values, the short fits and boiling points: W12–W15. */
import { boilingPoint } from '../../../domain/hydronics/fluid/boilingPoint.ts';
import { if97RegionOne } from '../../../domain/hydronics/fluid/if97RegionOne.ts';
import { waterDensityFit, waterVapourPressureFit } from '../../../domain/hydronics/fluid/waterFits.ts';
import { saturationPressureMpaAbs } from '../../../domain/hydronics/waterSaturation.ts';
import { unwrap } from '../../../domain/result.ts';
import type { CheckRow } from '../checkRow.ts';
import { computed, percent, published } from './rowKinds.ts';

const TABLE_5 = 'IAPWS R7-97(2012), Table 5';
const TABLE_35 = 'IAPWS R7-97(2012), Table 35';
const FITS = 'the printed fits';
const SATURATION = 'IAPWS R7-97(2012), region 4';

/** Nine printed figures. */
const ninth = { relative: 5e-9 };

function regionOne(temperatureK: number, pressureMpaAbs: number) {
  return unwrap(if97RegionOne({ temperatureK, pressureMpaAbs }));
}

export const waterRows: readonly CheckRow[] = [
  published(
    'W12.v',
    'IF97 region 1, 300 K, 3 MPa',
    'specific volume, m³/kg',
    0.001002152,
    1e-6 * 0.001002152,
    TABLE_5,
    () => regionOne(300, 3).specificVolumeM3PerKg,
  ),
  published(
    'W12.cp',
    'IF97 region 1, 300 K, 3 MPa',
    'heat capacity, kJ/(kg K)',
    4.17301,
    { relative: 1e-6 },
    TABLE_5,
    () => regionOne(300, 3).specificHeatKjPerKgK,
  ),
  // The same table's other figures, all nine digits.
  published(
    'W12.v-9',
    '300 K, 3 MPa',
    'specific volume, m³/kg',
    0.100215168e-2,
    ninth,
    TABLE_5,
    () => regionOne(300, 3).specificVolumeM3PerKg,
  ),
  published(
    'W12.cp-9',
    '300 K, 3 MPa',
    'heat capacity, kJ/(kg K)',
    0.417301218e1,
    ninth,
    TABLE_5,
    () => regionOne(300, 3).specificHeatKjPerKgK,
  ),
  published(
    'W12.v-80',
    '300 K, 80 MPa',
    'specific volume, m³/kg',
    0.971180894e-3,
    ninth,
    TABLE_5,
    () => regionOne(300, 80).specificVolumeM3PerKg,
  ),
  published(
    'W12.cp-80',
    '300 K, 80 MPa',
    'heat capacity, kJ/(kg K)',
    0.401008987e1,
    ninth,
    TABLE_5,
    () => regionOne(300, 80).specificHeatKjPerKgK,
  ),
  published(
    'W12.v-500',
    '500 K, 3 MPa',
    'specific volume, m³/kg',
    0.1202418e-2,
    ninth,
    TABLE_5,
    () => regionOne(500, 3).specificVolumeM3PerKg,
  ),
  published(
    'W12.cp-500',
    '500 K, 3 MPa',
    'heat capacity, kJ/(kg K)',
    0.465580682e1,
    ninth,
    TABLE_5,
    () => regionOne(500, 3).specificHeatKjPerKgK,
  ),
  published(
    'W13.300',
    'saturation line, 300 K',
    'pressure, kPa',
    3.53659,
    percent(1e-4),
    TABLE_35,
    () => 1000 * unwrap(saturationPressureMpaAbs(300)),
  ),
  published(
    'W13.500',
    'saturation line, 500 K',
    'pressure, kPa',
    2638.898,
    percent(1e-4),
    TABLE_35,
    () => 1000 * unwrap(saturationPressureMpaAbs(500)),
  ),
  ...(
    [
      [20, 998.204],
      [60, 983.199],
      [80, 971.798],
    ] as const
  ).map(([temperatureC, expected]) =>
    computed(`W14.density-${temperatureC}`, `density fit, ${temperatureC} °C`, 'ρ, kg/m³', expected, 0.001, FITS, () =>
      unwrap(waterDensityFit({ temperatureC })),
    ),
  ),
  ...(
    [
      [60, 19.945],
      [80, 47.41],
    ] as const
  ).map(([temperatureC, expected]) =>
    computed(`W14.vapour-${temperatureC}`, `vapour fit, ${temperatureC} °C`, 'pv, kPa', expected, 0.001, FITS, () =>
      unwrap(waterVapourPressureFit({ temperatureC })),
    ),
  ),
  computed('W15.half', '0.5 bar gauge, sea level', 'boiling point, °C', 111.6, 0.2, SATURATION, () =>
    unwrap(boilingPoint({ gaugePressureBarG: 0.5 })),
  ),
  computed('W15.one', '1.0 bar gauge, sea level', 'boiling point, °C', 120.4, 0.2, SATURATION, () =>
    unwrap(boilingPoint({ gaugePressureBarG: 1 })),
  ),
];
