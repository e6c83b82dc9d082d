/** Glycol–water: the property table, G1–G6 and the test rows of an open library. */
import { glycolMassPct } from '../../../domain/hydronics/fluid/glycolConcentration.ts';
import { glycolFreezingPoint } from '../../../domain/hydronics/fluid/glycolFreezingPoint.ts';
import type { Glycol } from '../../../domain/hydronics/fluid/glycolKind.ts';
import { glycolProperties } from '../../../domain/hydronics/fluid/glycolProperties.ts';
import { liquidExpansion } from '../../../domain/hydronics/fluid/liquidExpansion.ts';
import { WATER } from '../../../domain/hydronics/fluid/systemFluid.ts';
import { unwrap } from '../../../domain/result.ts';
import type { CheckRow } from '../checkRow.ts';
import { computed, percent, published } from './rowKinds.ts';

const IIR = 'IIR 2010 secondary-fluid polynomials';
const LIBRARY = 'IIR 2010, test rows of the open library SecondaryCoolantProps';
const GLYCOL: Record<'PG' | 'EG', Glycol> = { PG: 'propylene-glycol', EG: 'ethylene-glycol' };

function freezing(short: 'PG' | 'EG', massPct: number) {
  return unwrap(glycolFreezingPoint({ glycol: GLYCOL[short], glycolMassPct: massPct }));
}
function properties(short: 'PG' | 'EG', massPct: number, temperatureC: number) {
  return unwrap(glycolProperties({ glycol: GLYCOL[short], glycolMassPct: massPct, temperatureC }));
}

/** Freezing °C; ρ at 20, 40, 60, 80 °C; cp at the same. */
const TABLE = [
  ['PG', 20, -7.2, [1014.8, 1006.4, 995.6, 983.2], [3.977, 4.019, 4.061, 4.102]],
  ['PG', 30, -12.8, [1023.8, 1013.4, 1001.2, 987.6], [3.857, 3.91, 3.962, 4.012]],
  ['PG', 40, -20.6, [1032.3, 1020.1, 1006.3, 991.6], [3.707, 3.771, 3.834, 3.896]],
  ['PG', 50, -32.2, [1039.1, 1025.4, 1010.5, 994.9], [3.53, 3.607, 3.683, 3.76]],
  ['EG', 20, -7.9, [1024.1, 1016.4, 1006.2, 993.8], [3.896, 3.933, 3.969, 4.005]],
  ['EG', 30, -14.6, [1038.0, 1028.8, 1017.5, 1004.3], [3.718, 3.775, 3.829, 3.878]],
  ['EG', 40, -23.8, [1051.9, 1041.4, 1029.1, 1015.4], [3.519, 3.598, 3.67, 3.734]],
  ['EG', 50, -36.0, [1064.9, 1053.4, 1040.5, 1026.4], [3.312, 3.413, 3.503, 3.582]],
] as const;
const TABLE_C = [20, 40, 60, 80] as const;

/** Within the open test data as G3 and G4; beyond 40 °C as the table's note allows. */
function tableTolerance(temperatureC: number) {
  return percent(temperatureC <= 40 ? 0.1 : 1);
}

export const glycolTableRows: readonly CheckRow[] = TABLE.flatMap(([short, massPct, freezingC, densities, heats]) => [
  computed(
    `GT-${short}${massPct}.freezing`,
    `${short} ${massPct} % mass`,
    'freezing point, °C',
    freezingC,
    0.1,
    IIR,
    () => freezing(short, massPct),
  ),
  ...TABLE_C.flatMap((temperatureC, column) => [
    computed(
      `GT-${short}${massPct}.density-${temperatureC}`,
      `${short} ${massPct} % mass, ${temperatureC} °C`,
      'ρ, kg/m³',
      densities[column] ?? Number.NaN,
      tableTolerance(temperatureC),
      IIR,
      () => properties(short, massPct, temperatureC).densityKgPerM3,
    ),
    computed(
      `GT-${short}${massPct}.heat-${temperatureC}`,
      `${short} ${massPct} % mass, ${temperatureC} °C`,
      'cp, kJ/(kg K)',
      heats[column] ?? Number.NaN,
      tableTolerance(temperatureC),
      IIR,
      () => properties(short, massPct, temperatureC).specificHeatKjPerKgK,
    ),
  ]),
]);

/** mass %, °C, viscosity Pa s, density kg/m³, heat capacity J/(kg K), printed to five figures. */
const LIBRARY_ROWS = {
  PG: [
    [0, 5, 1.5364e-3, 1.0003e3, 4.2048e3],
    [0, 20, 1.0072e-3, 9.9852e2, 4.1866e3],
    [0, 40, 6.5033e-4, 9.9253e2, 4.1783e3],
    [20, 5, 3.4941e-3, 1.0191e3, 3.9459e3],
    [20, 20, 2.0301e-3, 1.0148e3, 3.9768e3],
    [20, 40, 1.1693e-3, 1.0064e3, 4.019e3],
    [40, 5, 8.9817e-3, 1.0401e3, 3.658e3],
    [40, 20, 4.3838e-3, 1.0323e3, 3.7067e3],
    [40, 40, 2.1408e-3, 1.0201e3, 3.7708e3],
  ],
  EG: [
    [0, 5, 1.5186e-3, 9.9915e2, 4.2027e3],
    [0, 20, 1.0078e-3, 9.9735e2, 4.1862e3],
    [0, 40, 6.5721e-4, 9.9181e2, 4.1785e3],
    [20, 5, 2.6594e-3, 1.0281e3, 3.8695e3],
    [20, 20, 1.6624e-3, 1.0241e3, 3.8962e3],
    [20, 40, 1.0133e-3, 1.0164e3, 3.9328e3],
    [40, 5, 4.7569e-3, 1.0585e3, 3.4559e3],
    [40, 20, 2.8191e-3, 1.0519e3, 3.519e3],
    [40, 40, 1.6351e-3, 1.0414e3, 3.5978e3],
  ],
} as const;

/** Freezing points the same tests print, °C at 10, 20 … 60 % mass. */
const LIBRARY_FREEZING = {
  PG: [-2.867, -7.173, -12.789, -20.568, -32.193, -50.003],
  EG: [-3.357, -7.949, -14.576, -23.813, -35.994, -51.201],
} as const;

/** One unit in the fifth figure: the library's own rounding. */
const fifthFigure = { relative: 1e-4 };

export const glycolLibraryRows: readonly CheckRow[] = (['PG', 'EG'] as const).flatMap((short) => [
  ...LIBRARY_ROWS[short].flatMap(([massPct, temperatureC, viscosity, density, heat]) => {
    const id = `GL-${short}${massPct}-${temperatureC}`;
    const inputs = `${short} ${massPct} % mass, ${temperatureC} °C`;
    return [
      published(
        `${id}.viscosity`,
        inputs,
        'μ, Pa s',
        viscosity,
        fifthFigure,
        LIBRARY,
        () => properties(short, massPct, temperatureC).viscosityPaS,
      ),
      published(
        `${id}.density`,
        inputs,
        'ρ, kg/m³',
        density,
        fifthFigure,
        LIBRARY,
        () => properties(short, massPct, temperatureC).densityKgPerM3,
      ),
      published(
        `${id}.heat`,
        inputs,
        'cp, J/(kg K)',
        heat,
        fifthFigure,
        LIBRARY,
        () => 1000 * properties(short, massPct, temperatureC).specificHeatKjPerKgK,
      ),
    ];
  }),
  ...LIBRARY_FREEZING[short].map((expected, index) => {
    const massPct = 10 * (index + 1);
    return published(
      `GL-${short}${massPct}.freezing`,
      `${short} ${massPct} % mass`,
      'freezing point, °C',
      expected,
      0.001,
      LIBRARY,
      () => freezing(short, massPct),
    );
  }),
]);

export const glycolRows: readonly CheckRow[] = [
  ...(
    [
      ['G1', 'PG', 20, -7.17],
      ['G1', 'PG', 30, -12.79],
      ['G1', 'PG', 40, -20.57],
      ['G1', 'PG', 50, -32.19],
      ['G2', 'EG', 20, -7.95],
      ['G2', 'EG', 30, -14.58],
      ['G2', 'EG', 40, -23.81],
      ['G2', 'EG', 50, -35.99],
    ] as const
  ).map(([id, short, massPct, expected]) =>
    published(`${id}.${massPct}`, `${short} ${massPct} % mass`, 'freezing point, °C', expected, 0.1, LIBRARY, () =>
      freezing(short, massPct),
    ),
  ),
  published(
    'G3.density',
    'PG 40 % mass, 20 °C',
    'ρ, kg/m³',
    1032.3,
    percent(0.1),
    LIBRARY,
    () => properties('PG', 40, 20).densityKgPerM3,
  ),
  published(
    'G3.heat',
    'PG 40 % mass, 20 °C',
    'cp, kJ/(kg K)',
    3.707,
    percent(0.1),
    LIBRARY,
    () => properties('PG', 40, 20).specificHeatKjPerKgK,
  ),
  published(
    'G4.density',
    'EG 20 % mass, 40 °C',
    'ρ, kg/m³',
    1016.4,
    percent(0.1),
    LIBRARY,
    () => properties('EG', 20, 40).densityKgPerM3,
  ),
  published(
    'G4.heat',
    'EG 20 % mass, 40 °C',
    'cp, kJ/(kg K)',
    3.933,
    percent(0.1),
    LIBRARY,
    () => properties('EG', 20, 40).specificHeatKjPerKgK,
  ),
  computed('G5.pg', '30 vol % PG', 'mass %', 30.8, 0.2, 'definition', () =>
    unwrap(glycolMassPct({ glycol: 'propylene-glycol', glycolVolPct: 30 })),
  ),
  computed('G5.eg', '40 vol % EG', 'mass %', 42.6, 0.2, 'definition', () =>
    unwrap(glycolMassPct({ glycol: 'ethylene-glycol', glycolVolPct: 40 })),
  ),
  computed(
    'G6.water',
    'water, 10 → 80 °C',
    'expansion, %',
    2.87,
    0.02,
    'IAPWS R7-97(2012)',
    () => 100 * unwrap(liquidExpansion({ fluid: WATER, coldC: 10, hotC: 80 })),
  ),
  ...(
    [
      [30, 4.1],
      [40, 4.6],
    ] as const
  ).map(([massPct, expected]) =>
    computed(
      `G6.pg-${massPct}`,
      `PG ${massPct} % mass, 10 → 80 °C`,
      'expansion, %',
      expected,
      0.3,
      `${IIR}, extrapolated`,
      () =>
        100 *
        unwrap(liquidExpansion({ fluid: { kind: 'propylene-glycol', glycolMassPct: massPct }, coldC: 10, hotC: 80 })),
    ),
  ),
];
