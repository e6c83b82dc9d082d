/** Fill-water hardness limits: H5, H6, and every cell of the printed tables. */
import { unwrap } from '../../../domain/result.ts';
import { austrianFillWaterLimitDh, fillWaterLimit } from '../../../domain/water/fillWaterLimit.ts';
import type { CheckRow } from '../checkRow.ts';
import { computed, fromMemory, published } from '../hydronics/rowKinds.ts';

const VDI_2005 = 'VDI 2035 Part 1:2005 as quoted in third-party manuals';
const VDI_2021 = 'VDI 2035 Part 1:2021';
const AUSTRIA = 'ÖNORM H 5195-1 as quoted in a third-party manual';

function combi45(systemVolumeL: number) {
  return unwrap(
    fillWaterLimit({
      edition: '2005',
      totalOutputKw: 45,
      smallestGeneratorKw: 45,
      generatorContentLPerKw: 0.1,
      systemVolumeL,
    }),
  );
}

/** Output kW, content L/kW; columns. "none" is null. Each row is asked at both of its ends. */
const ROWS = [
  [50, 0.3, [null, 3.0, 0.02], [null, 3.0, 0.05]],
  [50, 0.29, [3.0, 2.0, 0.02], [3.0, 1.5, 0.05]],
  [50.1, 0.3, [2.0, 1.5, 0.02], [2.0, 1.0, 0.05]],
  [50.1, 0.29, [2.0, 1.5, 0.02], [2.0, 1.0, 0.05]],
  [200, 0.3, [2.0, 1.5, 0.02], [2.0, 1.0, 0.05]],
  [200.1, 0.3, [1.5, 0.02, 0.02], [1.5, 0.05, 0.05]],
  [600, 0.3, [1.5, 0.02, 0.02], [1.5, 0.05, 0.05]],
  [600.1, 0.3, [0.02, 0.02, 0.02], [0.05, 0.05, 0.05]],
] as const;

/** Litres per kW that lie at the ends of each column, edition by edition. */
const COLUMNS = {
  '2005': [
    [0, 19.99],
    [20, 49.99],
    [50, 500],
  ],
  '2021': [
    [0, 20],
    [20.01, 40],
    [40.01, 500],
  ],
} as const;

const NO_LIMIT = -1;

const tableRows = (['2005', '2021'] as const).flatMap((edition) =>
  ROWS.flatMap(([totalOutputKw, generatorContentLPerKw, cells2005, cells2021]) =>
    COLUMNS[edition].flatMap((ends, column) =>
      ends.map((litresPerKw) => {
        const cell = (edition === '2005' ? cells2005 : cells2021)[column];
        const limit = () =>
          unwrap(
            fillWaterLimit({
              edition,
              totalOutputKw,
              smallestGeneratorKw: totalOutputKw,
              generatorContentLPerKw,
              systemVolumeL: litresPerKw * totalOutputKw,
            }),
          ).limitMolPerM3 ?? NO_LIMIT;
        const inputs = `${totalOutputKw} kW, ${generatorContentLPerKw} L/kW inside, ${litresPerKw} L/kW system`;
        const id = `HT-${edition} ${inputs}`;
        const expected = cell ?? NO_LIMIT;
        return edition === '2005'
          ? published(id, inputs, 'limit, mol/m³', expected, 0, VDI_2005, limit)
          : fromMemory(published(id, inputs, 'limit, mol/m³', expected, 0, VDI_2021, limit));
      }),
    ),
  ),
);

export const fillWaterRows: readonly CheckRow[] = [
  published(
    'H5.volume',
    '45 kW combi (< 0.3 L/kW), 400 L',
    'L/kW',
    8.9,
    0.05,
    VDI_2005,
    () => combi45(400).specificVolumeLPerKw,
  ),
  published('H5.limit', 'same', 'limit, mol/m³', 3.0, 0, VDI_2005, () => combi45(400).limitMolPerM3 ?? NO_LIMIT),
  published('H5.dh', 'same', 'limit, °dH', 16.8, 0.05, VDI_2005, () => combi45(400).limitDh ?? NO_LIMIT),
  published(
    'H6.volume',
    'same boiler, floor system 1200 L',
    'L/kW',
    26.7,
    0.05,
    VDI_2005,
    () => combi45(1200).specificVolumeLPerKw,
  ),
  published('H6.limit', 'same', 'limit, mol/m³', 2.0, 0, VDI_2005, () => combi45(1200).limitMolPerM3 ?? NO_LIMIT),
  published('H6.dh', 'same', 'limit, °dH', 11.2, 0.05, VDI_2005, () => combi45(1200).limitDh ?? NO_LIMIT),
  ...tableRows,
  ...(
    [
      [0, 11.2],
      [19.99, 11.2],
      [20, 5.6],
      [49.99, 5.6],
      [50, 0.6],
    ] as const
  ).map(([specificVolumeLPerKw, expected]) =>
    published(
      `HA ${specificVolumeLPerKw}`,
      `≤ 50 kW, < 0.3 L/kW, ${specificVolumeLPerKw} L/kW`,
      'limit, °dH',
      expected,
      0,
      AUSTRIA,
      () => unwrap(austrianFillWaterLimitDh({ specificVolumeLPerKw })),
    ),
  ),
  computed(
    'HD 0.02',
    '0.02 mol/m³',
    '°dH',
    0.11,
    0.005,
    'hardness definitions',
    () =>
      unwrap(
        fillWaterLimit({
          edition: '2005',
          totalOutputKw: 700,
          smallestGeneratorKw: 700,
          generatorContentLPerKw: 1,
          systemVolumeL: 0,
        }),
      ).limitDh ?? NO_LIMIT,
  ),
];
