/** Tube and system volumes: V1–V5, and the printed tube table. */
import { systemVolumeEstimate } from '../../../domain/hydronics/volume/systemVolumeEstimate.ts';
import { findTube } from '../../../domain/hydronics/volume/tubes.ts';
import { tubeVolume } from '../../../domain/hydronics/volume/tubeVolume.ts';
import { feetToMetres, LITRES_PER_CUBIC_FOOT, litresToUsGallons } from '../../../domain/quantity/conversions.ts';
import { unwrap } from '../../../domain/result.ts';
import type { CheckRow } from '../checkRow.ts';
import { computed, fromMemory, lastFigure, percent, published } from './rowKinds.ts';

const COPPER_TABLE = 'copper tube handbook table';
const PEX_TABLE = 'PEX dimension pages, ASTM F876 mean inner diameters';
const SHEET = 'water-treatment trade sheet';

function litresPerMetre(key: string): number {
  const tube = findTube(key);
  if (!tube) throw new Error(`no tube ${key}`);
  return unwrap(tubeVolume({ innerDiameterMm: tube.innerDiameterMm, lengthM: 1 }));
}
function gallonsPerFoot(key: string): number {
  return litresToUsGallons(litresPerMetre(key) * feetToMetres(1));
}

/** Key, litres per metre, US gallons per foot. */
const INCH_TUBES = [
  ['copper-l-3/8', 0.0937, 0.00754],
  ['copper-l-1/2', 0.1505, 0.01212],
  ['copper-m-1/2', 0.1641, 0.01321],
  ['copper-l-3/4', 0.3122, 0.02514],
  ['copper-m-3/4', 0.3333, 0.02683],
  ['copper-l-1', 0.5324, 0.04287],
  ['copper-m-1', 0.564, 0.04541],
  ['copper-l-1-1/4', 0.8108, 0.06529],
  ['copper-l-1-1/2', 1.1477, 0.09241],
  ['pex-3/8', 0.0621, 0.005],
  ['pex-1/2', 0.1143, 0.00921],
  ['pex-5/8', 0.1669, 0.01344],
  ['pex-3/4', 0.2281, 0.01837],
  ['pex-1', 0.3765, 0.03032],
] as const;

/** Key, litres per metre. */
const MILLIMETRE_TUBES = [
  ['copper-10x0.6', 0.0608],
  ['copper-12x0.6', 0.0916],
  ['copper-15x0.7', 0.1453],
  ['copper-15x1', 0.1327],
  ['copper-22x0.9', 0.3205],
  ['copper-22x1', 0.3142],
  ['copper-28x0.9', 0.5391],
  ['copper-28x1', 0.5309],
  ['copper-35x1.2', 0.8347],
  ['pex-12x1.7', 0.0581],
  ['pex-14x2', 0.0785],
  ['pex-16x2', 0.1131],
  ['pex-17x2', 0.1327],
  ['pex-20x2', 0.2011],
] as const;

export const tubeTableRows: readonly CheckRow[] = [
  ...INCH_TUBES.flatMap(([key, litres, gallons]) =>
    [
      computed(`VT-${key}/metre`, key, 'L/m', litres, lastFigure(4), 'geometry of the printed inner diameter', () =>
        litresPerMetre(key),
      ),
      computed(
        `VT-${key}/foot`,
        key,
        'US gal/ft',
        gallons,
        lastFigure(5),
        'geometry of the printed inner diameter',
        () => gallonsPerFoot(key),
      ),
    ].map((row) => (key.startsWith('copper-m') ? fromMemory(row) : row)),
  ),
  ...MILLIMETRE_TUBES.map(([key, litres]) =>
    computed(`VT-${key}/metre`, key, 'L/m', litres, lastFigure(4), 'geometry', () => litresPerMetre(key)),
  ),
];

export const volumeRows: readonly CheckRow[] = [
  ...(
    [
      ['1/2', 0.0121, 0.00162],
      ['3/4', 0.0251, 0.00336],
      ['1', 0.0429, 0.00573],
    ] as const
  ).flatMap(([size, gallons, cubicFeet]) => [
    computed(`V1.gal-${size}`, `type L ${size} in`, 'gal/ft', gallons, percent(1), COPPER_TABLE, () =>
      gallonsPerFoot(`copper-l-${size}`),
    ),
    published(
      `V1.ft3-${size}`,
      `type L ${size} in`,
      'ft³/ft',
      cubicFeet,
      percent(1),
      COPPER_TABLE,
      () => (litresPerMetre(`copper-l-${size}`) * feetToMetres(1)) / LITRES_PER_CUBIC_FOOT,
    ),
  ]),
  ...(
    [
      ['1/2', 0.92, 0.92],
      ['3/4', 1.84, 1.83],
      ['1', 3.03, 3.03],
    ] as const
  ).flatMap(([size, expected, printed]) => [
    computed(
      `V2.${size}`,
      `PEX ${size} in, mean inner diameter`,
      'gal per 100 ft',
      expected,
      percent(1),
      PEX_TABLE,
      () => 100 * gallonsPerFoot(`pex-${size}`),
    ),
    published(
      `V2.published-${size}`,
      `PEX ${size} in, mean inner diameter`,
      'gal per 100 ft',
      printed,
      percent(1),
      PEX_TABLE,
      () => 100 * gallonsPerFoot(`pex-${size}`),
    ),
  ]),
  ...(
    [
      ['15x0.7', 0.145],
      ['22x0.9', 0.32],
      ['28x0.9', 0.539],
    ] as const
  ).map(([size, expected]) =>
    computed(`V3.${size}`, `copper ${size} mm`, 'L/m', expected, percent(1), 'EN 1057 sizes', () =>
      litresPerMetre(`copper-${size}`),
    ),
  ),
  computed('V4.16x2', 'PEX 16×2 mm', 'L/m', 0.113, percent(1), 'geometry', () => litresPerMetre('pex-16x2')),
  computed('V4.20x2', 'PEX 20×2 mm', 'L/m', 0.201, percent(1), 'geometry', () => litresPerMetre('pex-20x2')),
  computed('V4.600m', '600 m of PEX 16×2 mm', 'L', 67.9, percent(1), 'geometry', () =>
    unwrap(tubeVolume({ innerDiameterMm: 12, lengthM: 600 })),
  ),
  // ±40 % is what the estimate claims of itself; the products are exact.
  published(
    'V5.panels',
    '24 kW, steel panels at 11 L/kW',
    'L',
    264,
    percent(40),
    SHEET,
    () => unwrap(systemVolumeEstimate({ outputKw: 24, emitter: 'steel-panels' })).litres,
  ),
  published(
    'V5.small',
    '24 kW, small domestic at 6 L/kW',
    'L',
    144,
    percent(40),
    SHEET,
    () => unwrap(systemVolumeEstimate({ outputKw: 24, emitter: 'small-domestic-or-microbore' })).litres,
  ),
  computed(
    'V5.panels-exact',
    '24 kW, steel panels at 11 L/kW',
    'L',
    264,
    1e-9,
    'arithmetic',
    () => unwrap(systemVolumeEstimate({ outputKw: 24, emitter: 'steel-panels' })).litres,
  ),
  computed(
    'V5.small-exact',
    '24 kW, small domestic at 6 L/kW',
    'L',
    144,
    1e-9,
    'arithmetic',
    () => unwrap(systemVolumeEstimate({ outputKw: 24, emitter: 'small-domestic-or-microbore' })).litres,
  ),
];
